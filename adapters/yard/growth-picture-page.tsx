import type { Knowledge, VanScope } from '../../src/index.ts';
import { type Drawn, growthPage, HOME } from './growth-frame.tsx';
import { type DrawnThing, type HeatBy, idOf, type PictureData } from './picture-data.ts';

/** What of the graph is looked at. */
export type Looking = { readonly van: VanScope | null; readonly by: HeatBy };

export const GRAPH = `${HOME}/graph`;

/** What stands behind an address of these pages: the van and the heat, where they are not the usual ones. */
export function queryOf({ van, by }: { readonly van: string | null; readonly by: HeatBy }): string {
  const asked = new URLSearchParams({
    ...(van === null ? {} : { van }),
    ...(by === 'asked' ? {} : { heat: by }),
  }).toString();
  return asked === '' ? '' : `?${asked}`;
}

/** The graph as a picture, and the same as a list. */
export function picturePage(drawn: Drawn, script: string, data: PictureData, looking: Looking, knowledge: Knowledge) {
  const van = looking.van?.id ?? null;
  const { by } = looking;
  const query = queryOf({ van, by });
  return growthPage(
    { ...drawn, files: { ...drawn.files, script } },
    'The graph, cut open',
    <>
      <nav class="paths" aria-label="Van">
        {[null, ...knowledge.vans.values()].map((each) => (
          <a href={GRAPH + queryOf({ van: each?.id ?? null, by })} aria-current={each?.id === looking.van?.id}>
            {each?.name ?? 'Every van'}
          </a>
        ))}
      </nav>
      <nav class="paths" aria-label="What is marked">
        <a href={GRAPH + queryOf({ van, by: 'asked' })} aria-current={by === 'asked'}>
          What is asked
        </a>
        <a href={GRAPH + queryOf({ van, by: 'failed' })} aria-current={by === 'failed'}>
          What did not help
        </a>
      </nav>
      <div
        id="picture"
        role="img"
        aria-label="A van cut open, with a room for each system. The list below has the same."
        data-from={`${GRAPH}/data${query}`}
        data-things={GRAPH}
        data-heat={by}
        hidden
      />
      <div class="camera" data-with-picture hidden>
        {[
          ['in', 'Nearer'],
          ['out', 'Further'],
          ['whole', 'The whole van'],
        ].map(([camera, words]) => (
          <button class="press" type="button" data-camera={camera}>
            {words}
          </button>
        ))}
      </div>
      <p data-with-picture hidden>
        {`Large discs are parts, small ones what is asked about them; a filled one is a fault. The yellower and larger, the more often it ${by === 'asked' ? 'is asked' : 'did not help'}. Touch one to open it.`}
      </p>
      <section id="thing" aria-live="polite" hidden />
      <h2>As a list</h2>
      {[...knowledge.systems].map(([system, title]) => {
        const own = data.things.filter((thing) => thing.here && systemOf(thing, knowledge) === system);
        return own.length === 0 ? null : (
          <details>
            <summary>{`${title}: ${own.length}`}</summary>
            <ul class="things">
              {own.map((thing) => (
                <li class={thing.kind === 'part' ? 'part' : undefined}>
                  <a href={`graph/${pathOf(thing)}${query}`}>{thing.name}</a>
                  {thing[by] === 0 ? null : ` ${thing[by]}`}
                </li>
              ))}
            </ul>
          </details>
        );
      })}
    </>,
  );
}

function pathOf({ key }: DrawnThing): string {
  return key.replace(':', '/');
}

function systemOf({ key, kind }: DrawnThing, { parts, topics }: Knowledge): string | undefined {
  return (kind === 'part' ? parts : topics).get(idOf(key))?.system;
}
