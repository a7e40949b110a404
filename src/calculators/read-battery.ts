import type { Reading } from './input-spec.ts';
import { MOST_ON_12V_W, offHookUpAppliances, runsOnBattery } from './lexicon.ts';
import { type Mention, mentionsIn } from './mentions.ts';

/** What is named in a sum about the battery: what runs on it, and what needs the hook-up. */
type OnBattery = { readonly runs: readonly Mention[]; readonly cannot: readonly Mention[] };

function namedIn({ counted, text, context: { figures, constants } }: Reading): OnBattery {
  const mentions = mentionsIn(counted, offHookUpAppliances(figures, constants)).filter(
    ({ appliance: { key }, watts }) =>
      !(key === 'kettle' && ON_GAS.test(text)) &&
      // '100 W on the roof' is the panel.
      !(key.startsWith('own-') && watts === figures.solarW),
  );
  const most = Math.max(MOST_ON_12V_W, figures.mains.inverterW ?? 0);
  const runs = ({ appliance: { key }, watts }: Mention) =>
    runsOnBattery(key, figures, constants) && !(key.startsWith('own-') && (watts ?? 0) > most);
  return { runs: mentions.filter(runs), cannot: mentions.filter((each) => !runs(each)) };
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
