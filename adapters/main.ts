import { createInterface } from 'node:readline';
import { ask } from './cli/ask.ts';
import { backup } from './cli/backup.ts';
import { bookings } from './cli/bookings.ts';
import { check } from './cli/check.ts';
import { runCommand, type Terminal } from './cli/command.ts';
import { exportGraph } from './cli/export.ts';
import { faults } from './cli/faults.ts';
import { gaps } from './cli/gaps.ts';
import { links } from './cli/links.ts';
import { newVan } from './cli/new-van.ts';
import { serve } from './cli/serve.ts';
import { signIn } from './cli/sign-in.ts';
import { simulate } from './cli/simulate.ts';
import { trial } from './cli/trial.ts';
import { environmentWithFile } from './config.ts';

const COMMANDS = [
  serve,
  ask,
  check,
  trial,
  simulate,
  faults,
  gaps,
  bookings,
  links,
  signIn,
  newVan,
  exportGraph,
  backup,
];

const terminal: Terminal = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  readIn: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
  isTty: process.stdin.isTTY === true,
  env: environmentWithFile(process.env),
};

// A reader that closes early (head) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await runCommand(COMMANDS, process.argv.slice(2), terminal);
