import type { Piece } from '../language/numbers.ts';

/** A thing that a hirer wants to plug in and whose name is in no list. */
export type UnknownThing = { readonly name: string; readonly from: number; readonly to: number };

const PLUGS_IN = /^(use|using|run|running|plug|charge|charging|brought|bring|bringing)$/;
const OWNED = /^(my|our|her|his|a|an|their)$/;
const ENDS =
  /^(with|and|or|on|off|at|while|whilst|when|in|as|to|for|too|from|together|please|here|alongside|plus|if|without|[?.,;!&+)(])$/;
/** What is run or used and is no appliance, or is named as what it is elsewhere. */
const NO_THING =
  /^(hook|hookup|ehu|electric|electrics|electricity|power|post|pole|supply|socket|sockets|plug|lead|cable|pitch|site|leccy|mains|van|caravan|camper|both|things|thing|stuff|own|few|couple|bit|lot|amp|amps|adaptor|adapter|battery|inverter|gas|hob|grill|oven|stove|water|bath|tap|toilet|loo|shower|car|tow|bottle|cylinder|wash|wife|husband|partner|son|daughter|mum|dad|kids|friend|night|day|week|hour|minute|while|generator|whole)$/;
const LONGEST = 3;

/**
 * 'Can I use my coffee grinder with the kettle': the grinder, so that it is asked after and not left out of the sum.
 *
 * @param taken The places of what is known by name.
 */
export function unknownThings(
  pieces: readonly Piece[],
  taken: readonly { readonly from: number; readonly to: number }[],
): readonly UnknownThing[] {
  const isTaken = (at: number) => taken.some(({ from, to }) => at >= from && at < to);
  return pieces.flatMap((piece, at): UnknownThing[] => {
    const from = at + 1;
    if (!OWNED.test(piece.text) || !pieces.slice(Math.max(0, at - 2), at).some(({ text }) => PLUGS_IN.test(text)))
      return [];
    let to = from;
    while (pieces[to]?.kind === 'word' && !ENDS.test(pieces[to]?.text ?? '') && to - from <= LONGEST) to++;
    const words = pieces.slice(from, to);
    const bounded = to === pieces.length || ENDS.test(pieces[to]?.text ?? '');
    if (words.length === 0 || words.length > LONGEST || !bounded) return [];
    if (words.some(({ text }, i) => NO_THING.test(text) || isTaken(from + i))) return [];
    return [{ name: words.map(({ text }) => text).join(' '), from, to }];
  });
}
