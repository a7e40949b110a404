import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/**
 * Collects what the start has left behind: the graph's text, its parsed form, what the indexes were made of. Left alone it
 * stays resident, 20 MB, until traffic makes V8 look, which on a quiet pitch may be days. It takes some 100 ms, once.
 */
export function letGoOfTheStart(): void {
  setFlagsFromString('--expose-gc');
  const collect: unknown = runInNewContext('gc');
  setFlagsFromString('--no-expose-gc');
  if (typeof collect !== 'function') return;
  // What the first round lets go of outside the heap goes back to the machine with the second, 10 MB.
  for (let round = 0; round < 2; round++) collect();
}
