import type { Reading } from './input-spec.ts';
import { batteryAppliances, MOST_ON_12V_W, mainsOnlyAppliances } from './lexicon.ts';
import { type Mention, mentionsIn } from './mentions.ts';

/** What is named in a sum about the battery: what runs on it, and what needs the hook-up. */
type OnBattery = { readonly runs: readonly Mention[]; readonly cannot: readonly Mention[] };

function namedIn({ counted, text, context: { figures, constants } }: Reading): OnBattery {
  const plugs = mainsOnlyAppliances(figures, constants).filter(({ key }) => key !== 'kettle' || !ON_GAS.test(text));
  const needPlug = new Set(plugs.map(({ key }) => key));
  const mentions = mentionsIn(counted, [...batteryAppliances(figures, constants), ...plugs]).filter(
    // '100 W on the roof' is the panel.
    ({ appliance, watts }) => !(appliance.key.startsWith('own-') && watts === figures.solarW),
  );
  const cannot = (mention: Mention) =>
    needPlug.has(mention.appliance.key) ||
    (mention.appliance.key.startsWith('own-') &&
      (mention.watts ?? 0) > Math.max(MOST_ON_12V_W, figures.mains.inverterW ?? 0));
  return { runs: mentions.filter((each) => !cannot(each)), cannot: mentions.filter(cannot) };
}

/** A kettle on the hob draws nothing. */
const ON_GAS = /\b(hob|gas|whistl\w*|stove)\b/;

/** What is named and runs on the battery. */
export function batteryNamed(reading: Reading): readonly Mention[] {
  return namedIn(reading).runs;
}

/** The names of what is named and cannot run off hook-up in this van; null when there is none. */
export function mainsOnlyNamed(reading: Reading): readonly string[] | null {
  const names = namedIn(reading).cannot.flatMap(({ appliance, off }) => (off ? [] : [appliance.name]));
  return names.length === 0 ? null : names;
}
