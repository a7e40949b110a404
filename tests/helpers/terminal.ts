import type { Terminal } from '../../adapters/cli/command.ts';

/** A terminal that keeps what is written and gives `lines` to read. */
export function aTerminal(env: Readonly<Record<string, string>> = {}, lines: readonly string[] = []) {
  const out: string[] = [];
  const err: string[] = [];
  const terminal: Terminal = {
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    readIn: async function* () {
      yield* lines;
    },
    isTty: false,
    env,
  };
  return { terminal, out: () => out.join(''), err: () => err.join('') };
}
