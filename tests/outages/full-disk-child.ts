import { publishFiles } from '../../adapters/files/publish.ts';
import type { FileEdit } from '../../src/index.ts';

/** Publishes the edits it is given, in a folder, and prints how it ended. */
const [folder = '', edits = '[]'] = process.argv.slice(2);
publishFiles(folder, JSON.parse(edits) as FileEdit[], async () => {}).then((published) =>
  process.stdout.write(JSON.stringify(published)),
);
