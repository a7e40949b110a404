import type { FC } from 'hono/jsx';
import type { Brief } from '../../src/index.ts';
import { Sent } from '../pages/blocks.tsx';
import { findsFor } from './finds.ts';
import { Csrf } from './frame.tsx';
import type { Session } from './session.ts';
import type { ThreadFacts } from './thread-facts.ts';
import type { YardWorld } from './world.ts';

/** What a person reads in five seconds: the question, what the bot made of it, what was tried, what to answer. */
export const BriefView: FC<{ world: YardWorld; session: Session; facts: ThreadFacts; brief: Brief; keyed: string }> = (
  props,
) => {
  const { world, session, facts, brief } = props;
  const path = `/yard/thread/${encodeURIComponent(facts.thread.id)}`;
  return (
    <section class="brief" aria-label="In short">
      {brief.question === '' ? null : <blockquote>{`\u2018${brief.question}\u2019`}</blockquote>}
      {brief.attachments.map((attachment) => (
        <Sent attachment={attachment} finds={findsFor(world, facts.thread.id)} />
      ))}
      {brief.understood.length === 0 ? null : (
        <p>
          {'The bot thinks: '}
          {brief.understood.map((one, i) => `${i === 0 ? '' : '; '}${one.title} (${sureness(one.probability)})`)}
        </p>
      )}
      {brief.tried.length === 0 ? null : (
        <>
          <h3>Tried so far</h3>
          <ul class="facts">
            {brief.tried.map((one) => (
              <li>{one}</li>
            ))}
          </ul>
        </>
      )}
      {brief.language === 'en' ? null : (
        <p>{`Writes in: ${new Intl.DisplayNames('en-GB', { type: 'language' }).of(brief.language)}`}</p>
      )}
      {brief.suggested === null ? null : (
        <form class="suggested" method="post" action={`${path}/say`}>
          <Csrf session={session} />
          <input type="hidden" name="key" value={`${props.keyed}s`} />
          <input type="hidden" name="text" value={brief.suggested} />
          <h3>Suggested answer</h3>
          <p id="suggested">{brief.suggested}</p>
          <div class="choices">
            <button class="press next" type="submit">
              Send it as it is
            </button>
            <a class="press" href={`${path}?change#text`} id="change">
              Change it first
            </a>
          </div>
        </form>
      )}
    </section>
  );
};

/** Of a hundred such questions, how many it would have right. */
function sureness(probability: number): string {
  return `${Math.round(probability * 100)} in 100`;
}
