import { stem } from '../language/stems.ts';
import { tokens } from '../language/tokens.ts';

/** Words that carry no content of their own: shared by a question and an answer they show nothing. */
export const COMMON = new Set(
  (
    'a an the is are was were be been being am do does did done has have had having will would can could should may might must ' +
    'it its this that these those there here he she they we you i me my our your their them us one ones some any ' +
    'of in on at to from by with for as up down out off over under into onto about after before than then now just still too also ' +
    'and or but so if when while because what which who where how why yes no not nor never none ok okay please thanks ' +
    'get got go goes going went see look looks looked say says said think seem seems show shows bit very really well much work works working worked more most less ' +
    'van thing things other another same only all both every each first last own'
  ).split(' '),
);

/** The words of a text as they are compared. Slots say nothing. */
export function wordsOf(text: string): string[] {
  return tokens(
    text
      .replace(/\{[^}]*\}/g, ' ')
      .replace(/anything but/gi, 'not')
      .replace(/in line/gi, 'inline')
      .replace(/\br[au]n out\b/gi, 'empty')
      .replace(/hook[ -]up/gi, 'hookup'),
  ).map((token) => token.text);
}

/** The stems that say what a text is about. */
export function contentOf(words: readonly string[]): Set<string> {
  return new Set(words.filter((word) => !COMMON.has(word) && !/^\d/.test(word)).map(stem));
}

/** The same of a text as typed. */
export function stemsOf(text: string): Set<string> {
  return contentOf(wordsOf(text));
}

/** Words that carry the speaker along, or name people and everyday things: a reply that holds them is none the less plain. */
const IDLE = new Set(
  (
    'already always anyway bang believe checked definite def done easy enough ever feel feels felt first found find guess honest lol loads mate oh pal quite reckon right rather since so sorry sure thing think though tried try well whole yes yeah yep love duck eh ha haha god gosh oops even shows showing reads reading say says told afraid did done hard pretty nearly almost mostly bloody quick good nice wee fan lot size theirs theres ours hers his own ones use used make makes made come comes came put turn turned switched tried bit little nice tiny ' +
    'husband wife son daughter kids kid lad lass bairns man men woman people everyone somebody someone mum dad friend neighbour neighbours warden ' +
    'kitchen bathroom washroom bedroom lounge front back rear left right top bottom end side corner middle inside outside post van site pitch caravan camper car awning tent door window floor wall roof ceiling cupboard locker drawer bed table seat step wheel ' +
    'sink basin tap taps shower toilet loo fridge freezer hob oven grill heater heating boiler kettle toaster microwave tv radio laptop phone charger hairdryer drier dryer lamp lamps light lights led switch button knob dial lever handle plug plugs socket sockets lead cable wire strip fuse battery panel screen display pump tank barrel hose pipe pipes bottle cylinder gas water power electric mains hook hookup breaker breakers rcd number bar bars ring burner burners flame flames pan pans cassette cap lid bag bags picture card bubble colour green red blue orange amber white black'
  ).split(' '),
);

export function isIdle(word: string): boolean {
  return IDLE.has(word) || (/\w{3}ly$/.test(word) && !/^(?:bare|hard|scarce)ly$/.test(word));
}
