import type { Piece } from '../language/numbers.ts';
import type { Quantity } from './quantities.ts';

/** Who is meant, as far as it was said. `people` is null when only children were counted ('3 kids'). */
export type PeopleSaid = {
  readonly people: number | null;
  readonly children: number | null;
  readonly adults: number | null;
};

const ADULTS = /^(adults?|grownups?|grown|parents|grandparents|men|women|ladies|blokes|lads|oldies|pensioners)$/;
const CHILDREN =
  /^(kids?|children|child|childs|bairns?|boys?|girls?|toddlers?|teens?|teenagers?|babies|baby|infants?|sons?|daughters?|grandkids|grandchildren|grandsons?|granddaughters?|littles|littlies|youngsters|nippers)$/;
const ANYONE =
  /^(people|peeps|ppl|peple|persons?|folk|folks|pax|guests|students|oaps|walkers|hikers|climbers|cyclists|surfers|anglers|scouts|colleagues|sisters|brothers|cousins|hirers|travellers|sleepers|heads|souls|humans|campers|occupants|passengers|friends|mates)$/;
const BETWEEN =
  /^(young|small|little|grown|-|other|more|hungry|thirsty|teenage|wee|big|old|older|elderly|retired|tired|fully|full|sized|adult|hungry|sandy|muddy|wet|poor|skint|lovely|noisy|growing|keen|grumpy|happy|very)$/;

/** Whom a plain number counts; null when it counts something else. */
export function kindOf(pieces: readonly Piece[], quantity: Quantity): 'adults' | 'children' | 'anyone' | null {
  let at = quantity.to;
  while (BETWEEN.test(pieces[at]?.text ?? '') && at < quantity.to + 3) {
    if (pieces[at]?.text === 'grown') return 'adults';
    at++;
  }
  const word = (pieces[at]?.text ?? '').replace(/'s?$/, '');
  if (word === 'ones' && at > quantity.to) return 'children';
  if (ADULTS.test(word)) return 'adults';
  if (CHILDREN.test(word)) return 'children';
  if (ANYONE.test(word)) return 'anyone';
  if (word === 'of' && /^(us|them|you|we)$/.test(pieces[at + 1]?.text ?? '')) return 'anyone';
  let first = quantity.from - 1;
  // 'We are only two', 'there's just the two'.
  while (/^(only|just|now|the)$/.test(pieces[first]?.text ?? '')) first--;
  const [before, earlier] = [pieces[first]?.text ?? '', pieces[first - 1]?.text ?? ''];
  if (before === 'us' && !/^(of|give|gave|got|sold)$/.test(earlier)) return 'anyone';
  if (before === 'of' && /^(family|party|group|crew)$/.test(earlier)) return 'anyone';
  const stops =
    word === '' ||
    /^([?.,!;)]|and|on|off|in|for|at|a|per|we|is|with|all|only|the|too|will|would|ok|if|when|who|using|doing|cooking|without|no)$/.test(
      word,
    );
  if ((before === 'for' || before === 'with') && stops && quantity.high < 13) return 'anyone';
  const ends = word === '' || /^([?.,!;]|with|having|in|and|now|tonight|here|this|for|so)$/.test(word);
  if (
    ends &&
    (before === "we're" || before === 'were' || (before === 'are' && (earlier === 'we' || earlier === 'there')))
  )
    return 'anyone';
  return null;
}
