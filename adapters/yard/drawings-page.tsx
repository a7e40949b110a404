import type { FC } from 'hono/jsx';
import type { Theme } from '../pages/colours.ts';
import { counted } from '../pages/counted.ts';
import type { SheetRow } from '../pictures/contact-sheet.ts';
import { pictureAt } from './finds.ts';
import { type Drawn, growthPage, HOME } from './growth-frame.tsx';

const ALL = `${HOME}/drawings`;

/** Every drawing as it is, each leading to its own page. With their rings they would weigh more than a page may. */
export function drawingsPage(drawn: Drawn, drawings: readonly SheetRow[], look: Theme) {
  return growthPage(
    drawn,
    counted(drawings.length, 'drawing'),
    <>
      <Looks at={ALL} look={look} />
      <div class={`drawings ${look}`}>
        {drawings.map(({ name, cells }) => (
          <a href={at(`${ALL}/${encodeURIComponent(name)}`, look)}>
            <Drawing name={name} touch={null} look={look} />
            {name}: {ringed(cells)}
          </a>
        ))}
      </div>
    </>,
  );
}

/** One drawing as it is and with each part ringed, side by side, and the way to those beside it. */
export function drawingPage(drawn: Drawn, drawings: readonly SheetRow[], { name, cells }: SheetRow, look: Theme) {
  const place = drawings.findIndex((each) => each.name === name);
  return growthPage(
    drawn,
    name,
    <>
      <nav class="paths" aria-label="Drawings">
        {[drawings[place - 1], drawings[place + 1]].map((beside) =>
          beside === undefined ? null : (
            <a href={at(`${ALL}/${encodeURIComponent(beside.name)}`, look)}>{beside.name}</a>
          ),
        )}
        <a href={at(ALL, look)}>All drawings</a>
      </nav>
      <Looks at={`${ALL}/${encodeURIComponent(name)}`} look={look} />
      <div class={`drawings ${look}`}>
        {cells.map(({ touch, alts }) => (
          <figure>
            <Drawing name={name} touch={touch} look={look} />
            <figcaption>
              <b>{touch ?? 'As it is'}</b>
              {alts.length === 0 ? null : `: ${alts.join(' / ')}`}
            </figcaption>
          </figure>
        ))}
      </div>
    </>,
  );
}

const Looks: FC<{ readonly at: string; readonly look: Theme }> = ({ at: path, look }) => (
  <nav class="paths" aria-label="Look">
    <a href={path} aria-current={look === 'light'}>
      By day
    </a>
    <a href={at(path, 'dark')} aria-current={look === 'dark'}>
      By night
    </a>
  </nav>
);

const Drawing: FC<{ readonly name: string; readonly touch: string | null; readonly look: Theme }> = (props) => (
  <img
    src={pictureAt({ picture: props.name, touch: props.touch }, props.look)}
    alt=""
    width="360"
    height="270"
    loading="lazy"
  />
);

const at = (path: string, look: Theme): string => (look === 'dark' ? `${path}?look=dark` : path);

/** 'ringed in 3 ways'; the bare drawing is none of them. */
function ringed(cells: SheetRow['cells']): string {
  const ways = cells.filter(({ touch }) => touch !== null).length;
  return ways === 0 ? 'nothing ringed' : `ringed in ${counted(ways, 'way')}`;
}
