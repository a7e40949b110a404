import type { Knowledge, Topic } from '../knowledge/knowledge.ts';
import type { SlipAt } from '../knowledge/raw-graph.ts';
import type { Slip } from '../knowledge/slip.ts';
import { fileOf } from './texts.ts';

const SUM_WITHIN = 0.005;
const MOST_RESETS = 2;

/** Priors sum to 1 for each symptom and van; ids are single; the answers shared between causes are of this symptom. */
export function causeSlips(topic: Topic, knowledge: Knowledge, slipAt: SlipAt): Slip[] {
  if (topic.causes.length === 0) return [];
  const slips: Slip[] = [];
  const at = fileOf(knowledge, topic.id);
  const causesField = ['topics', topic.id, 'causes'];
  if (topic.kind !== 'symptom' && !topic.notice)
    slips.push(slipAt(at, causesField, 'only symptoms have causes', 'no causes here'));
  const ids = topic.causes.map((cause) => cause.id);
  topic.causes.forEach((cause, i) => {
    if (ids.indexOf(cause.id) !== i)
      slips.push(slipAt(at, [...causesField, i, 'id'], `the cause '${cause.id}' stands twice`, 'an id of its own'));
    for (const other of cause.check?.also ?? []) {
      if (!ids.includes(other))
        slips.push(
          slipAt(at, [...causesField, i, 'check', 'also'], `no cause '${other}' in this symptom`, ids.join(', ')),
        );
    }
  });
  for (const scope of knowledge.vans.values()) {
    if (!scope.topics.has(topic.id)) continue;
    const causes = scope.causes(topic.id);
    const sum = causes.reduce((total, cause) => total + cause.prior, 0);
    if (causes.length > 0 && Math.abs(sum - 1) > SUM_WITHIN) {
      slips.push(slipAt(at, causesField, `the priors for ${scope.name} sum to ${sum.toFixed(3)}`, '1'));
    }
    if (causes.length === 0 && scope.data.priorsAs === undefined)
      slips.push(slipAt(at, causesField, `no cause is in scope for ${scope.name}`, 'at least one cause'));
    const resets = causes.filter((cause) => cause.fix.reset).length;
    if (resets > MOST_RESETS)
      slips.push(
        slipAt(
          at,
          causesField,
          `${resets} resets of the main switch for ${scope.name}`,
          `at most ${MOST_RESETS} in one walk`,
        ),
      );
  }
  return slips;
}
