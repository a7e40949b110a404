import type { FC } from 'hono/jsx';
import type { Reply } from '../../src/index.ts';
import { freshKey } from '../http/fresh-key.ts';
import type { Finds } from '../pages/blocks.tsx';
import type { StandingLine } from '../pages/put-right.ts';
import { Said } from '../pages/said.tsx';
import { dayAt, sameDay } from '../pages/when.ts';
import { sentKey } from './keys.ts';
import type { Visitor } from './visitor.ts';
import type { WebWorld } from './world.ts';

/** Lines from the `from`th on, each new day announced. */
export const Lines: FC<{ world: WebWorld; visitor: Visitor; lines: readonly StandingLine[]; from: number }> = ({
  world,
  visitor,
  lines,
  from,
}) => {
  const lastSaid = lines.findLastIndex((line) => line.who === 'hirer');
  const notice = lines.findLastIndex((line) => line.reply?.kind === 'notice');
  const here = Math.max(notice, lastSaid);
  return (
    <>
      {lines.slice(from).map((line, i) => {
        const before = lines[from + i - 1];
        const newDay = before !== undefined && !sameDay(before.atMs, line.atMs, world.firm.timeZone);
        return (
          <>
            {newDay ? <p class="day">{dayAt(line.atMs, world.firm.timeZone)}</p> : null}
            <OneLine world={world} visitor={visitor} line={line} open={from + i > lastSaid} here={from + i === here} />
          </>
        );
      })}
    </>
  );
};

/** `open`: nothing was said after it, so that what it offers can still be pressed. */
export const OneLine: FC<{ world: WebWorld; visitor: Visitor; line: StandingLine; open: boolean; here: boolean }> = (
  props,
) => {
  const { world, visitor, line, open, here } = props;
  return (
    <Said
      line={line}
      hirer="You said"
      firm={`${world.firm.name} said`}
      zone={world.firm.timeZone}
      finds={findsFor(world, visitor)}
      tick={true}
      here={here}
      sentAs={line.message === null ? null : sentKey(line.message.key, visitor.address)}
    >
      {open && line.reply !== null && line.reply.choices.length > 0 ? (
        <Choices reply={line.reply} path={visitor.path} />
      ) : null}
    </Said>
  );
};

const Choices: FC<{ reply: Reply; path: string }> = ({ reply, path }) => {
  const listed = reply.choices.length > 2 || reply.choices.some((choice) => choice.label.length > 24);
  return (
    <form class={listed ? 'choices many' : 'choices'} method="post" action={path}>
      <input type="hidden" name="key" value={freshKey()} />
      {reply.choices.map((choice, i) => (
        <button class={choice.tone === 'next' ? 'press next' : 'press'} type="submit" name="choice" value={choice.id}>
          {listed ? <span class="digit">{i + 1}</span> : null}
          <span>{choice.label}</span>
        </button>
      ))}
    </form>
  );
};

function findsFor(world: WebWorld, visitor: Visitor): Finds {
  return {
    picture: (use, theme) =>
      world.pictureSvg(use, theme) === null
        ? null
        : `/chat/-/picture/${encodeURIComponent(use.picture)}/${encodeURIComponent(use.touch ?? '')}.${theme}.svg`,
    file: (file) => `${visitor.path}/file/${encodeURIComponent(file)}`,
  };
}
