import { type GrowthDecision, idFor, KINDS } from '../../src/index.ts';
import type { Form } from '../http/forms.ts';

/** What the form asks for; null when it is none of ours. What is wrong in its fields is said when it is drafted. */
export function decisionIn(form: Form): GrowthDecision | null {
  const field = (name: string): string => form.text(name).replace(/\s+/g, ' ').trim();
  const lines = (name: string): string[] =>
    form
      .text(name)
      .split(/\r?\n/)
      .map((line) => line.trim())
      .filter((line) => line !== '');
  const optional = (name: string): string | null => (field(name) === '' ? null : field(name));
  switch (field('decision')) {
    case 'add-wordings':
      return { kind: 'add-wordings', topic: field('topic'), wordings: lines('wordings') };
    case 'set-aside':
      return { kind: 'set-aside', wordings: lines('wordings') };
    case 'teach-word':
      return { kind: 'teach-word', says: field('says'), means: field('means'), part: optional('part') };
    case 'note-lack':
      return { kind: 'note-lack', van: field('van'), part: field('part'), say: field('say') };
    case 'improve-answer': {
      const place = (['first', 'facts', 'otherwise'] as const).find((each) => each === field('place')) ?? 'facts';
      return { kind: 'improve-answer', topic: field('topic'), place, say: field('say'), van: optional('van') };
    }
    case 'new-topic': {
      const kind = KINDS.find((each) => each === field('kind')) ?? 'fact';
      const title = field('title');
      const system = field('system');
      return {
        kind: 'new-topic',
        topic: {
          system,
          id: optional('id') ?? idFor(system, title),
          kind,
          title,
          about: field('about')
            .split(/[\s,]+/)
            .filter((part) => part !== ''),
          first: field('first'),
          steps: lines('steps'),
          otherwise: optional('otherwise'),
          wordings: lines('wordings'),
        },
      };
    }
    default:
      return null;
  }
}
