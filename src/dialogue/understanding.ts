import type { ChatKind, Understood } from '../match/types.ts';
import { type Draft, does, notes, opens, passes, remembers, type Situation } from './draft.ts';
import { toPerson } from './pass.ts';
import { answerTopic } from './topic.ts';

/** Matches the message against the van's scope and does what each of its questions asks for, in the order asked. */
export function understandAndDo(draft: Draft, situation: Situation): Draft {
  const { scope, served, message } = situation;
  if (scope === null) return unbooked(draft, situation);
  const { lastTopic, lastText } = draft.thread.memory;
  const questions = served.matcher.understand(message.text, { van: scope.id, lastTopic, lastText });
  return questions.reduce(
    (so, understood, i) => decideOne(so, understood, situation, i === questions.length - 1),
    draft,
  );
}

function decideOne(draft: Draft, understood: Understood, situation: Situation, last: boolean): Draft {
  const { decision } = understood;
  switch (decision.kind) {
    case 'answer':
      return answerTopic(draft, decision.topic, understood.text, understood, situation, last);
    case 'choose': {
      const topics = decision.topics.map((each) => each.topic);
      const offered = does(draft, { kind: 'choose', topics: decision.topics, understood, why: 'close' });
      return opens(notes(offered, { kind: 'offered', topics }), { kind: 'choice', text: understood.text, topics });
    }
    case 'lacks': {
      const { topic, part, probability } = decision;
      const told = does(draft, { kind: 'lacks', topic, part, probability, understood });
      const { van } = draft.thread;
      return opens(
        notes(
          told,
          { kind: 'lacks', topic, part },
          { kind: 'gap', text: understood.text, why: 'van-has-none', van, topics: [topic] },
        ),
        null,
      );
    }
    case 'chat':
      return chats(draft, decision.chat);
    case 'person':
      return toPerson(draft, 'asked', understood, situation);
    case 'language': {
      const spoken = remembers(draft, { language: decision.language });
      if (draft.thread.keeper !== 'bot') return does(spoken, { kind: 'waiting' });
      const passed = does(spoken, { kind: 'pass', reason: 'language', understood, language: decision.language });
      return opens(passes(passed, 'language', situation.nowMs), null);
    }
    case 'pass':
      return unsure(draft, understood, decision.why, situation);
  }
}

/** Small talk is answered in one line and changes nothing; a question the bot has open stays open. */
export function chats(draft: Draft, chat: ChatKind): Draft {
  return does(draft, { kind: 'chat', chat });
}

const LAST_TRY_FLOOR = 0.04;

/** Nothing was sure enough: once, the nearest topics are offered; else people get it, and it is noted as a gap. */
function unsure(
  draft: Draft,
  understood: Understood,
  why: 'no-such-topic' | 'too-close' | 'word-not-known',
  situation: Situation,
): Draft {
  const { scope, served } = situation;
  const topics = understood.ranked.slice(0, 3).map((each) => each.topic);
  const noted = notes(draft, { kind: 'gap', text: understood.text, why, van: draft.thread.van, topics });
  if (draft.thread.keeper === 'waiting') return does(noted, { kind: 'waiting' });
  const van = scope?.id ?? '';
  const nearest = served.matcher
    .nearest(understood.text, { van, lastTopic: null, lastText: '' }, 3)
    .filter((each) => each.probability >= LAST_TRY_FLOOR);
  if (why === 'too-close' && nearest.length > 0) {
    const offered = does(noted, { kind: 'choose', topics: nearest, understood, why: 'last-try' });
    return opens(offered, { kind: 'choice', text: understood.text, topics: nearest.map((each) => each.topic) });
  }
  return opens(
    passes(does(noted, { kind: 'pass', reason: 'unsure', understood, language: null }), 'unsure', situation.nowMs),
    null,
  );
}

/**
 * Without a booking no van is known and nothing about one is answered; small talk and the wish for a person are
 * understood all the same, by the words of any van.
 */
function unbooked(draft: Draft, situation: Situation): Draft {
  const { served, message } = situation;
  const anyVan = [...served.knowledge.vans.keys()][0];
  const understood =
    anyVan === undefined
      ? undefined
      : served.matcher.understand(message.text, { van: anyVan, lastTopic: null, lastText: '' })[0];
  if (understood?.decision.kind === 'person') return toPerson(draft, 'asked', null, situation);
  if (understood?.decision.kind === 'language') {
    const spoken = remembers(draft, { language: understood.decision.language });
    return passes(
      does(spoken, { kind: 'pass', reason: 'language', understood: null, language: understood.decision.language }),
      'language',
      situation.nowMs,
    );
  }
  return opens(does(draft, { kind: 'ask-code' }), { kind: 'code' });
}
