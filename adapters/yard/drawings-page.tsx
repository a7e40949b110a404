import type { Theme } from '../pages/colours.ts';
import { counted } from '../pages/counted.ts';
import type { SheetRow } from '../pictures/contact-sheet.ts';
import { pictureAt } from './finds.ts';
import { type Drawn, growthPage, HOME } from './growth-frame.tsx';

/** Every drawing as it is and with each part ringed, in one look, so that they can be compared side by side. */
export function drawingsPage(drawn: Drawn, drawings: readonly SheetRow[], look: Theme) {
  return growthPage(
    drawn,
    counted(drawings.length, 'drawing'),
    <>
      <nav class="paths" aria-label="Look">
        <a href={`${HOME}/drawings`} aria-current={look === 'light'}>
          By day
        </a>
        <a href={`${HOME}/drawings?look=dark`} aria-current={look === 'dark'}>
          By night
        </a>
      </nav>
      {drawings.map(({ name, cells }) => (
        <section>
          <h2>{name}</h2>
          <div class={`drawings ${look}`}>
            {cells.map(({ touch, alts }) => (
              <figure>
                <img src={pictureAt({ picture: name, touch }, look)} alt="" width="360" height="270" loading="lazy" />
                <figcaption>
                  <b>{touch ?? 'As it is'}</b>
                  {alts.length === 0 ? null : `: ${alts.join(' / ')}`}
                </figcaption>
              </figure>
            ))}
          </div>
        </section>
      ))}
    </>,
  );
}
