import { readConfig } from '../config.ts';

/** The graph folder of the settings; the other settings must be right as well, so that a slip in them is not put off. */
export function graphFolder(env: Readonly<Record<string, string | undefined>>): string {
  return readConfig(env).graphFolder;
}
