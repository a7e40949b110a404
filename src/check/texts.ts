import type { TopicId } from '../basics/ids.ts';
import { conditionsOf, holds } from '../knowledge/holds.ts';
import type { Knowledge, Topic, VanScope } from '../knowledge/knowledge.ts';
import type { Clause, Says, When } from '../knowledge/schema.ts';
import type { FieldPath } from '../knowledge/yaml-file.ts';

/** A text of a topic with its place in the file; `when` is the condition under which it is said. */
export type PlacedText = { readonly field: FieldPath; readonly text: string; readonly when: When | undefined };

/** Every text of a topic that may be shown to a hirer. */
export function textsOf(topic: Topic): PlacedText[] {
  const found: PlacedText[] = [];
  const add = (field: FieldPath, says: Says | readonly Clause[] | undefined): void => {
    if (says === undefined) return;
    if (typeof says === 'string') found.push({ field, text: says, when: undefined });
    else {
      says.forEach((clause, i) => {
        if (typeof clause === 'string') found.push({ field: [...field, i], text: clause, when: undefined });
        else found.push({ field: [...field, i, 'say'], text: clause.say, when: clause.when });
      });
    }
  };
  const base = ['topics', topic.id];
  const { answer } = topic;
  if (answer !== undefined) {
    for (const key of ['first', 'steps', 'facts', 'caution', 'otherwise'] as const)
      add([...base, 'answer', key], answer[key]);
    answer.pictures.forEach((use, i) => {
      found.push({ field: [...base, 'answer', 'pictures', i, 'alt'], text: use.alt, when: use.when });
    });
  }
  topic.causes.forEach((cause, i) => {
    add([...base, 'causes', i, 'check', 'ask'], cause.check?.ask);
    add([...base, 'causes', i, 'check', 'look'], cause.check?.look);
    add([...base, 'causes', i, 'fix', 'do'], cause.fix.do);
  });
  return found;
}

/** The texts of a topic that are said in one van: causes out of scope are left out. */
export function textsIn(topic: Topic, scope: VanScope, atKnownSite: boolean): PlacedText[] {
  const holder = { id: scope.id, parts: scope.parts, atKnownSite };
  const causes = new Set(scope.causes(topic.id).map((cause) => cause.id));
  return textsOf(topic).filter(({ field, when }) => {
    const cause = field[2] === 'causes' ? topic.causes[Number(field[3])] : undefined;
    return holds(when, holder) && (cause === undefined || causes.has(cause.id));
  });
}

/** Every condition of a topic, with the field it stands in. */
export function conditionsIn(topic: Topic): { field: FieldPath; term: string }[] {
  const { answer } = topic;
  const lists: [FieldPath, Says | readonly Clause[] | undefined][] = [
    ...(['first', 'steps', 'facts', 'caution', 'otherwise'] as const).map(
      (key): [FieldPath, Says | readonly Clause[] | undefined] => [['topics', topic.id, 'answer', key], answer?.[key]],
    ),
    ...topic.causes.flatMap((cause, i): [FieldPath, Says | undefined][] => [
      [['topics', topic.id, 'causes', i, 'check'], cause.check?.ask],
      [['topics', topic.id, 'causes', i, 'check'], cause.check?.look],
      [['topics', topic.id, 'causes', i, 'fix'], cause.fix.do],
    ]),
  ];
  const pictures = (answer?.pictures ?? []).flatMap((use) => (use.when === undefined ? [] : [use.when].flat()));
  return [
    ...lists.flatMap(([field, says]) => conditionsOf(says).flatMap((term) => ({ field, term }))),
    ...pictures.map((term) => ({ field: ['topics', topic.id, 'answer', 'pictures'], term })),
  ].flatMap(({ field, term }) => [term].flat().map((each) => ({ field, term: each })));
}

/** The file a topic stands in, relative to graph/. */
export function fileOf(knowledge: Knowledge, topicId: TopicId): string {
  return `systems/${knowledge.topics.get(topicId)?.system ?? ''}.yaml`;
}
