import { stem } from '../language/stems.ts';
import type { TongueReader, TongueReading } from './tongue.ts';
import type { Word } from './words.ts';

/**
 * What the second net looks at in a text: stems alone and in pairs, the groups of the rules alone and in pairs, what a guard set
 * aside, and whether a rule was met. A stem in the reach of a negation is another feature than the stem. Groups and rules are the
 * same in every language, so what was learnt from English wordings holds for the others.
 *
 * @param meant The word that a slip of the finger stands for: a slip changes nothing here.
 */
export function featuresOf(
  words: readonly Word[],
  { alarms, groups, guarded, negated }: TongueReading,
  meant: TongueReader['meant'],
): readonly string[] {
  const found = new Set<string>();
  const stems = words.map((word, at) => (negated.has(at) ? 'no ' : '') + stem(meant(word.text)[0] ?? word.text));
  stems.forEach((each, at) => {
    found.add(each);
    const next = stems[at + 1];
    if (next !== undefined) found.add(`${each} ${next}`);
  });
  groups.forEach((group, at) => {
    found.add(`<${group}>`);
    for (let other = at + 1; other < groups.length; other++) found.add(pair(group, groups[other] ?? ''));
  });
  for (const each of guarded) {
    found.add(`<${each}>`);
    found.add(`<${each.slice(0, each.indexOf(' '))}>`);
  }
  for (const alarm of alarms) {
    found.add(alarm.firm ? '<firm rule>' : '<rule>');
    found.add(`<rule ${alarm.hazard}>`);
    found.add(`<rule ${alarm.rule}>`);
  }
  return [...found];
}

const pairs = new Map<string, Map<string, string>>();

/** The name of a pair, made once: there are some thousands, and each text has a hundred. */
function pair(first: string, second: string): string {
  let ofFirst = pairs.get(first);
  if (ofFirst === undefined) {
    ofFirst = new Map();
    pairs.set(first, ofFirst);
  }
  let name = ofFirst.get(second);
  if (name === undefined) {
    name = `<${first}+${second}>`;
    ofFirst.set(second, name);
  }
  return name;
}
