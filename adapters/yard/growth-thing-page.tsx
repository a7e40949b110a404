import type { FC } from 'hono/jsx';
import {
  type Heat,
  type Knowledge,
  type Part,
  saidIn,
  type Topic,
  type TopicId,
  type VanScope,
} from '../../src/index.ts';
import { counted } from '../pages/counted.ts';
import { type Drawn, growthPage, Wide } from './growth-frame.tsx';
import { GRAPH, type Looking, queryOf } from './growth-picture-page.tsx';

type Seen = {
  readonly knowledge: Knowledge;
  readonly looking: Looking;
  readonly heat: ReadonlyMap<TopicId, Heat>;
};

/** One part: its controls, what goes wrong with it and cures it, and how hirers ask about it. */
export function partPage(drawn: Drawn, part: Part, seen: Seen) {
  const { knowledge } = seen;
  const topics = [...knowledge.topics.values()].filter((topic) => topic.about.includes(part.id));
  const faults = topics.filter((topic) => topic.kind === 'symptom');
  const controls = Object.values(part.controls);
  const holders = vansOf(seen).filter((van) => van.parts.has(part.id));
  return thingPage(
    drawn,
    seen,
    asTitle(part.name),
    <>
      {part.also.length === 0 ? null : <p>{`Also called ${part.also.join(', ')}.`}</p>}
      <p>
        {holders.length === 0 ? 'No van has it.' : holders.map((van) => `${van.name}${placeIn(van, part)}`).join('; ')}
      </p>
      <h3>{`Controls: ${controls.length}`}</h3>
      <ul class="thin">
        {controls.map((control) => (
          <li>{[control.name, ...control.also].join(', ')}</li>
        ))}
      </ul>
      <h3>{`What goes wrong: ${faults.length}`}</h3>
      {faults.map((topic) => (
        <Fault topic={topic} seen={seen} of={part} />
      ))}
      <h3>{`What is asked: ${topics.length}`}</h3>
      {topics.map((topic) => (
        <Wordings topic={topic} seen={seen} />
      ))}
    </>,
  );
}

/** One answer: what it is about, its causes and fixes, and how hirers ask for it. */
export function topicPage(drawn: Drawn, topic: Topic, seen: Seen) {
  const { knowledge, looking } = seen;
  const query = queryOf({ van: looking.van?.id ?? null, by: looking.by });
  return thingPage(
    drawn,
    seen,
    topic.title,
    <>
      <ul class="things">
        {topic.about.map((id) => (
          <li class="part">
            <a href={`${GRAPH}/part/${id}${query}`}>{knowledge.parts.get(id)?.name ?? id}</a>
          </li>
        ))}
      </ul>
      {topic.kind === 'symptom' ? <Fault topic={topic} seen={seen} of={null} /> : null}
      <Wordings topic={topic} seen={seen} open />
    </>,
  );
}

function thingPage(drawn: Drawn, seen: Seen, title: string, children: unknown) {
  const { looking } = seen;
  return growthPage(
    drawn,
    title,
    <>
      <section id="thing">
        <h2>{looking.van === null ? title : `${title}, in ${looking.van.name}`}</h2>
        {children}
      </section>
      <p>
        <a class="press" href={GRAPH + queryOf({ van: looking.van?.id ?? null, by: looking.by })}>
          Back to the graph
        </a>
      </p>
    </>,
  );
}

/** A symptom with its causes, likeliest first, each with how it is told and what cures it. */
const Fault: FC<{ topic: Topic; seen: Seen; of: Part | null }> = ({ topic, seen, of }) => {
  const { looking, knowledge } = seen;
  const causes = looking.van?.causes(topic.id) ?? topic.causes;
  return (
    <section>
      {of === null ? null : (
        <p>
          <a href={`${GRAPH}/topic/${topic.id}${queryOf({ van: looking.van?.id ?? null, by: looking.by })}`}>
            {topic.title}
          </a>
        </p>
      )}
      {causes.length === 0 ? (
        <p>Its causes are not written down: it is answered from its text alone.</p>
      ) : (
        <Wide label={topic.title}>
          <table>
            <thead>
              <tr>
                {['cause', 'told by', 'cured by'].map((name) => (
                  <th scope="col">{name}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {causes.map(({ say, of: part, check, fix }) => (
                <tr>
                  <th scope="row">
                    {say}
                    {part === undefined ? null : <span class="about">{knowledge.parts.get(part)?.name ?? part}</span>}
                  </th>
                  <td>
                    {check === undefined ? 'nothing to see' : saidIn(check.ask, looking.van, knowledge).join(' / ')}
                  </td>
                  <td>
                    {saidIn(fix.do, looking.van, knowledge).join(' / ')}
                    <span class="about">
                      {`${fix.who === 'hirer' ? 'The hirer' : 'One of us'}, ${counted(fix.minutes, 'minute')}; cures ${Math.round(100 * fix.success)} in a hundred`}
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </section>
  );
};

const Wordings: FC<{ topic: Topic; seen: Seen; open?: boolean }> = ({ topic, seen, open }) => {
  const wordings = Object.values(topic.wordings).flat();
  const heat = seen.heat.get(topic.id);
  const asked = heat === undefined ? '' : `; asked ${counted(heat.asked, 'time')}, did not help ${heat.failed}`;
  return (
    <details open={open === true}>
      <summary>{`${topic.title} (${counted(wordings.length, 'way')} of asking${asked})`}</summary>
      <ul class="thin">
        {wordings.map((wording) => (
          <li>{wording}</li>
        ))}
      </ul>
    </details>
  );
};

function vansOf({ looking, knowledge }: Seen): readonly VanScope[] {
  return looking.van === null ? [...knowledge.vans.values()] : [looking.van];
}

/** Where it is, as the van's file says. */
function placeIn(van: VanScope, part: Part): string {
  const place = van.data.has[part.id]?.['where'];
  return place === undefined ? '' : ` (${place})`;
}

function asTitle(name: string): string {
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;
}
