import type { TopicId } from '../basics/ids.ts';
import { countedIn } from './quantities.ts';

/** A question that a stock answers: it lasts, or it does not. */
const LASTS =
  /\b(how long|how many (days|nights|hours)|(will|would|does|do|should|gonna|going to)\b.*\blasts?|lasting|enough|good for|see us|hold out|days wise)\b/;
/** From here on the subject is looked for first. */
const ASKS = /\b(how (long|many|often|quick|quickly|soon|fast)|will|would|does|enough|good for)\b/;

type Subject = { readonly topic: TopicId; readonly named: RegExp; readonly asks: RegExp };

/** The subjects that are taken for one another, with the question that asks for their sum. */
const SUBJECTS: readonly Subject[] = [
  {
    topic: 'gas-how-long',
    // 'On gas', 'gas heating' name a source, not what is to last.
    named:
      /(?<!\b(on|by|with|via|to|using|the heating|heater) )(?<!\bno )\b(gas|(gas )?(bottles?|cylinders?)|propane|butane)\b(?! (heat|heating|heater|fire|hob|or electric|and electric))/,
    asks: LASTS,
  },
  { topic: 'dc-battery-days', named: /\b(battery|batteries)\b/, asks: LASTS },
  {
    topic: 'dc-solar-keep-up',
    named: /\b(solar|roof panel|the sun|sunshine)\b/,
    asks: /\b(keep(ing)? up|keeps|enough|cover|covers|manage|cope|sufficient|plenty)\b/,
  },
  {
    topic: 'hotwater-time',
    named:
      /\b(hot water|water('s| is| to get| gets| be)? (hot|warm|ready)|water heater|(heat|warm)(ing)?( up)? the water)\b/,
    asks: /\bhow (long|quick|quickly|soon|fast)\b|\bwhen(s|'s| is| will)\b/,
  },
  {
    topic: 'hotwater-shower-length',
    named: /\bshowers?\b(?! water)/,
    asks: /\bhow (long|many minutes)\b|\bminutes\b/,
  },
  {
    topic: 'heating-time',
    named: /\b(warm(ing)?|heat(ing)?|get)( up)?( the| our| this)? (van|caravan|place|up|it|in here|to \d+)\b/,
    asks: /\bhow (long|quick|quickly|soon|fast)\b/,
  },
  {
    topic: 'toilet-capacity',
    named: /\b(toilet|loo|cassette|portaloo)\b/,
    asks: /\bhow (long|often|many (days|nights))\b|\bwhen\b.*\b(full|empty|emptying)\b/,
  },
];

/**
 * The sum that a message asks for by its subject: the first one named after the words that ask ('the battery is fine but
 * how long will the gas last'), or else the only one named at all ('enough gas, off hook-up?').
 *
 * @returns Null when no subject is named, or several are and none stands after the asking.
 */
export function sumAsked(text: string): TopicId | null {
  const said = countedIn(text)
    .pieces.map((piece) => piece.text)
    .join(' ');
  const from = said.search(ASKS);
  const named = SUBJECTS.filter(({ asks }) => asks.test(said)).flatMap(({ topic, named: pattern }) => {
    const first = said.search(pattern);
    if (first < 0) return [];
    const after = from < 0 ? -1 : said.slice(from).search(pattern);
    return [{ topic, after: after < 0 ? null : after }];
  });
  const following = named.flatMap(({ topic, after }) => (after === null ? [] : [{ topic, after }]));
  const nearest = [...following].sort((a, b) => a.after - b.after)[0];
  if (nearest !== undefined) return nearest.topic;
  return named.length === 1 ? (named[0]?.topic ?? null) : null;
}
