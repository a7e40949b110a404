import type { Served, Turned, Understood } from '../../src/index.ts';

/** How a turn came about, for the operator: danger, words as read, what was linked, topics, the decision's arithmetic. */
export function whyText(text: string, { moves }: Turned, served: Served): string {
  const danger = served.readDanger(text, { before: '', vanHas: () => true });
  const understood = moves.flatMap((move) =>
    'understood' in move && move.understood !== null ? [move.understood] : [],
  );
  return [
    `danger: ${danger.danger === null ? 'none' : `${danger.danger.hazard} (${danger.danger.level})`}`,
    ...danger.why.map((line) => `  ${line}`),
    ...understood.flatMap(understoodLines),
    `moves: ${moves.map((move) => move.kind).join(', ') || 'none'}`,
    '',
  ].join('\n');
}

function understoodLines({ text, ranked, why, decision }: Understood): string[] {
  const read = why.tokens.map(({ said, read: as }) => (said === as ? said : `${said} -> ${as}`)).join(' | ');
  return [
    `question: ${text}`,
    `  read: ${read}`,
    ...(why.linked.length > 0 ? [`  linked: ${why.linked.join(', ')}`] : []),
    ...ranked
      .slice(0, 5)
      .map(({ topic, probability }) => `  ${probability.toFixed(3)} ${topic}${featuresOf(topic, why)}`),
    ...why.costs.map(({ decision: what, minutes }) => `  ${what}: ${minutes.toFixed(2)} minutes expected`),
    `  decision: ${decision.kind}`,
  ];
}

function featuresOf(topic: string, why: Understood['why']): string {
  const own = why.features.filter((each) => each.topic === topic).slice(0, 6);
  return own.length === 0
    ? ''
    : `  (${own.map(({ feature, weight }) => `${feature} ${weight > 0 ? '+' : ''}${weight.toFixed(2)}`).join(', ')})`;
}
