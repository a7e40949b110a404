import type { TopicId } from '../basics/ids.ts';
import { conditionsOf, holds } from '../knowledge/holds.ts';
import type { Knowledge, Topic, VanScope } from '../knowledge/knowledge.ts';
import type { Clause, PictureUseData, Says, When } from '../knowledge/schema.ts';
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
  }
  topic.causes.forEach((cause, i) => {
    add([...base, 'causes', i, 'check', 'ask'], cause.check?.ask);
    add([...base, 'causes', i, 'check', 'look'], cause.check?.look);
    add([...base, 'causes', i, 'fix', 'do'], cause.fix.do);
  });
  for (const { field, use } of pictureUsesOf(topic))
    found.push({ field: [...field, 'alt'], text: use.alt, when: use.when });
  return found;
}

/** Every use of a drawing: with the answer, a check or a fix. */
export function pictureUsesOf({
  id,
  answer,
  causes,
}: Topic): { readonly field: FieldPath; readonly use: PictureUseData }[] {
  const base = ['topics', id];
  const places: [FieldPath, readonly PictureUseData[]][] = [
    [[...base, 'answer', 'pictures'], answer?.pictures ?? []],
    ...causes.flatMap(({ check, fix }, i): [FieldPath, readonly PictureUseData[]][] => [
      [[...base, 'causes', i, 'check', 'pictures'], check?.pictures ?? []],
      [[...base, 'causes', i, 'fix', 'pictures'], fix.pictures],
    ]),
  ];
  return places.flatMap(([field, uses]) => uses.map((use, i) => ({ field: [...field, i], use })));
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
  return [
    ...lists.flatMap(([field, says]) => conditionsOf(says).map((term) => ({ field, term }))),
    ...pictureUsesOf(topic).flatMap(({ field, use }) => [use.when ?? []].flat().map((term) => ({ field, term }))),
  ];
}

/** The file a topic stands in, relative to graph/. */
export function fileOf(knowledge: Knowledge, topicId: TopicId): string {
  return `systems/${knowledge.topics.get(topicId)?.system ?? ''}.yaml`;
}
