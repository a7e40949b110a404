import { type ParseArgsConfig, parseArgs } from 'node:util';

type Options = NonNullable<ParseArgsConfig['options']>;
type Values<O extends Options> = ReturnType<
  typeof parseArgs<{ options: O; allowPositionals: true; strict: true }>
>['values'];

/** Where a command writes and reads: the process's own streams, or a test's. */
export type Terminal = {
  readonly out: (text: string) => void;
  /** Progress and complaints; never a result. */
  readonly err: (text: string) => void;
  readonly readIn: () => AsyncIterable<string>;
  readonly isTty: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
};

/** Exit codes: 0 done, 1 the work failed or found something, 2 used wrongly. */
export type ExitCode = 0 | 1 | 2;

export type Command = {
  readonly name: string;
  /** One line for the list of commands. */
  readonly does: string;
  /** What stands after the name: '[--van dunlin] [text]'. */
  readonly usage: string;
  /** Option lines for --help. */
  readonly help: readonly string[];
  readonly run: (args: readonly string[], terminal: Terminal) => Promise<ExitCode>;
};

/** The command was used wrongly: told on standard error with its usage, exit 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** The work could not be done, for a reason that the user can mend: told without a stack, exit 1. */
export class WorkError extends Error {
  override readonly name = 'WorkError';
}

export function command<O extends Options>(spec: {
  readonly name: string;
  readonly does: string;
  readonly usage: string;
  readonly help: readonly string[];
  readonly options: O;
  readonly run: (values: Values<O>, positionals: readonly string[], terminal: Terminal) => Promise<ExitCode>;
}): Command {
  return {
    ...spec,
    run: (args, terminal) => {
      const { values, positionals } = parsed(args, spec.options);
      return spec.run(values, positionals, terminal);
    },
  };
}

function parsed<O extends Options>(args: readonly string[], options: O) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true as const, strict: true as const });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** The help of one command. */
export function helpOf({ name, does, usage, help }: Command): string {
  return [
    `pitchhand ${name} ${usage}`.trimEnd(),
    '',
    does,
    ...(help.length > 0 ? ['', ...help.map((line) => `  ${line}`)] : []),
    '',
  ].join('\n');
}

/** Runs one command line. */
export async function runCommand(
  commands: readonly Command[],
  args: readonly string[],
  terminal: Terminal,
): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    terminal.out(overview(commands));
    return name === undefined ? 2 : 0;
  }
  const found = commands.find((each) => each.name === name);
  if (found === undefined) {
    terminal.err(`pitchhand: no command '${name}'; 'pitchhand --help' lists them\n`);
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    terminal.out(helpOf(found));
    return 0;
  }
  try {
    return await found.run(rest, terminal);
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.err(`pitchhand ${name}: ${error.message}\n\n${helpOf(found)}`);
      return 2;
    }
    if (error instanceof WorkError || (error instanceof Error && error.name === 'ConfigError')) {
      terminal.err(`pitchhand ${name}: ${error.message}\n`);
      return 1;
    }
    throw error;
  }
}

function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((each) => each.name.length));
  const lines = commands.map((each) => `  ${each.name.padEnd(width)}  ${each.does}`);
  return ['pitchhand COMMAND', '', ...lines, '', "'pitchhand COMMAND --help' tells more of one.", ''].join('\n');
}
