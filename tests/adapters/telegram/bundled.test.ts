import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import type { createTelegram } from '../../../adapters/telegram/telegram.ts';
import { until } from '../../contracts/channel.ts';
import { anInTray, optionsFor } from '../../helpers/telegram-rig.ts';
import { TelegramStandIn } from '../../helpers/telegram-stand-in.ts';

/** The shipped program is one bundled file, and bundling changes the names of classes. */
it('works when it is bundled as the shipped program is', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'bundled-'));
  const outfile = join(folder, 'telegram.mjs');
  await build({
    entryPoints: [fileURLToPath(new URL('../../../adapters/telegram/telegram.ts', import.meta.url))],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
  });
  const bundled = (await import(pathToFileURL(outfile).href)) as { createTelegram: typeof createTelegram };
  const standIn = await new TelegramStandIn().start();
  const tray = anInTray();
  const channel = bundled.createTelegram(optionsFor(standIn, { receive: tray.receive }));
  await channel.start();
  standIn.person('Ada').says('hello');
  await until(() => tray.messages.length === 1, 'the message');
  await channel.stop();
  await standIn.close();
  await rm(folder, { recursive: true });
  expect(standIn.complaints).toEqual([]);
});
