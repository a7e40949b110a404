import { command, UsageError } from './command.ts';
import { withData } from './with-data.ts';

export const backup = command({
  name: 'backup',
  does: 'Makes a consistent copy of the firm’s data while the server runs.',
  usage: 'FILE',
  help: [],
  options: {},
  run: async (_, [file], terminal) => {
    if (file === undefined) throw new UsageError('expected the FILE to write');
    return withData(terminal, async ({ store }) => {
      await store.backup(file);
      terminal.out(`${file}\n`);
      return 0;
    });
  },
});
