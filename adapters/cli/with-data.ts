import { join } from 'node:path';
import type { Served, Store } from '../../src/index.ts';
import { type Config, readConfig } from '../config.ts';
import { openSqlite } from '../sqlite/sqlite-store.ts';
import type { ExitCode, Terminal } from './command.ts';
import { servedGraph } from './served-graph.ts';

export type Data = {
  readonly config: Config;
  readonly store: Store;
  /** Loaded when it is first asked for: a backup needs no graph. */
  readonly served: () => Served;
  readonly now: () => number;
};

/** The database of a data folder. */
export function databaseFile(dataFolder: string): string {
  return join(dataFolder, 'pitchhand.sqlite');
}

/** Opens the firm's data beside a running server, and closes it whatever happens. */
export async function withData(terminal: Terminal, work: (data: Data) => Promise<ExitCode>): Promise<ExitCode> {
  const config = readConfig(terminal.env);
  const { store } = await openSqlite(databaseFile(config.dataFolder));
  try {
    return await work({ config, store, served: () => servedGraph(terminal), now: Date.now });
  } finally {
    await store.close();
  }
}
