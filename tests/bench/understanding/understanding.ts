import { cpus } from 'node:os';
import { createMatcher } from '../../../src/match/matcher.ts';
import { realKnowledge, realServed } from '../../helpers/real-graph.ts';
import { ablation } from './ablation.ts';
import { afterEdits } from './after-edit.ts';
import { growth, spread, timed } from './growth.ts';
import { OTHERS, OURS } from './matchers.ts';
import { accuracy, auroc, brier, calibrationError, coverageAt, type Judged } from './metrics.ts';
import { allLines, dataSets, dataThere } from './open-data.ts';
import { cell } from './open-table.ts';
import { outcomeOf, recordedSets, sharesOf } from './recorded.ts';

/*
 * How well messages are understood: our own recorded questions in two halves, the open data sets by the lab's protocol
 * beside other matchers, what each idea is worth, and times. Prints Markdown, ready for DEVELOPERS.md.
 */

const say = (...lines: readonly string[]): void => console.log(lines.join('\n'));
say(
  `${new Date().toISOString().slice(0, 10)}, Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}`,
);

const knowledge = realKnowledge();
const { matcher } = realServed();
const sets = recordedSets(knowledge);
const singles = sets['topics'] ?? [];

say('', '## Recorded questions', '', '| set | half | n | outcomes, % |', '|---|---|---|---|');
for (const [name, all] of Object.entries(sets)) {
  for (const half of ['tuning', 'aside'] as const) {
    const some = all.filter((one) => one.half === half);
    say(`| ${name} | ${half} | ${some.length} | ${sharesOf(some.map((one) => outcomeOf(matcher, one)))} |`);
  }
}

const judged: readonly Judged[] = [...singles, ...(sets['off-topic'] ?? [])].map(({ text, van, topics }) => {
  const best = matcher.understand(text, { van, lastTopic: null, lastText: '' })[0]?.ranked[0];
  return {
    confidence: best?.probability ?? 0,
    right: topics.length > 0 && best?.topic === topics[0],
    covered: topics.length > 0,
  };
});
say('', '## Confidence, single questions with what no topic answers', '');
say(
  `AUROC ${auroc(judged).toFixed(3)}, expected calibration error ${calibrationError(judged).toFixed(3)}, Brier ${brier(judged).toFixed(3)}`,
);
say('', '| wrong, % of all | answered rightly, % of covered |', '|---|---|');
for (const limit of [0.005, 0.01, 0.02, 0.03, 0.04, 0.05]) {
  say(`| ${(100 * limit).toFixed(1)} | ${(100 * coverageAt(judged, limit)).toFixed(1)} |`);
}
say(`| all answered | ${(100 * accuracy(judged)).toFixed(1)} |`);

const texts = singles.map((one) => one.text);
const context = { van: 'dunlin', lastTopic: null, lastText: '' };
const bayes = createMatcher(knowledge, null);
say('', '## Times, p50 / p99 in ms, one message read, matched and decided', '');
say(`with weights ${spread(timed(texts, (text) => matcher.understand(text, context)))}`);
say(`naive Bayes alone ${spread(timed(texts, (text) => bayes.understand(text, context)))}`);
const from = performance.now();
createMatcher(knowledge, null);
say(`naive Bayes from nothing: ${((performance.now() - from) / 1000).toFixed(2)} s`);
const { byHand, published } = await afterEdits(10);
const seconds = (times: readonly number[]): string =>
  [Math.floor(times.length / 2), times.length - 1]
    .map((place) => ((times.toSorted((a, b) => a - b)[place] ?? 0) / 1000).toFixed(2))
    .join(' / ');
say(
  `answers from an edited graph, p50 / worst of ten: by hand ${seconds(byHand)} s, published ${seconds(published)} s`,
);

say(
  '',
  '## Ablation: first / among three on recorded single questions, %',
  '',
  '| | tuning | aside |',
  '|---|---|---|',
);
say(...ablation(knowledge, singles));

if (!dataThere()) say('', 'The open data sets are not beside the project: their tables are left out.');
else {
  const all = dataSets();
  const heads = all.map((set) => set.name);
  say(
    '',
    '## Open data: accuracy / coverage at 5 % wrong / AUROC',
    '',
    `| | ${heads.join(' | ')} |`,
    `|---|${'---|'.repeat(heads.length)}`,
  );
  const typos: string[] = [];
  for (const method of [OURS, ...OTHERS]) {
    const most = method.name.startsWith('fuse') ? 150 : method === OURS ? Infinity : 1000;
    const cells = all.map((set) => cell(method, set, most));
    say(`| ${method.name} | ${cells.map((one) => one.plain).join(' | ')} |`);
    typos.push(`| ${method.name} | ${cells.map((one) => one.typos).join(' | ')} |`);
  }
  say(
    '',
    '## Open data under typo stress: accuracy',
    '',
    `| | ${heads.join(' | ')} |`,
    `|---|${'---|'.repeat(heads.length)}`,
    ...typos,
  );
  say(
    '',
    '## Growth, naive Bayes: p50 / p99 in ms',
    '',
    '| wordings | topics | a question | ready in |',
    '|---|---|---|---|',
  );
  say(...growth(allLines(), [1_000, 10_000, 100_000]));
}
