import { choiceId } from '../dialogue/choices.ts';
import type { Move } from '../dialogue/moves.ts';
import type { Block, Choice, Reply } from './reply.ts';
import { type Told, whileWaiting } from './told.ts';

/** A sum in words: verdict first, the working, the caution, the small picture; or what is still needed. */
export function calculationReply(move: Extract<Move, { kind: 'calculation' }>, told: Told): Reply {
  const { outcome, topic } = move;
  switch (outcome.kind) {
    case 'asks':
      return {
        kind: 'calculate',
        from: null,
        topic,
        blocks: [{ kind: 'line', text: outcome.question }],
        choices: picks(outcome.choices),
      };
    case 'refused':
      return {
        kind: 'calculate',
        from: null,
        topic,
        blocks: [{ kind: 'line', text: outcome.says }],
        choices: picks(outcome.choices),
      };
    case 'result': {
      const blocks: Block[] = [{ kind: 'line', text: outcome.first }];
      if (outcome.working.length > 0) blocks.push({ kind: 'facts', items: outcome.working });
      if (outcome.bar !== null) blocks.push({ kind: 'bar', bar: outcome.bar });
      if (outcome.caution !== null) blocks.push({ kind: 'caution', text: outcome.caution });
      return { kind: 'calculate', from: null, topic, blocks: whileWaiting(blocks, told), choices: [] };
    }
  }
}

function picks(labels: readonly string[]): readonly Choice[] {
  return labels.map((label) => ({ id: choiceId({ kind: 'input', value: label }), label, tone: 'next' }));
}
