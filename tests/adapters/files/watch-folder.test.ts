import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchFolder } from '../../../adapters/files/watch-folder.ts';

describe('a folder that is watched', () => {
  let folder = '';
  let end = (): void => {};
  const changed = vi.fn();
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pitchhand-watch-'));
    mkdirSync(join(folder, 'systems'));
    writeFileSync(join(folder, 'systems/water.yaml'), '0');
    end = watchFolder(folder, changed, () => {});
  });
  afterEach(() => {
    end();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Makes a change and waits until it is told, and all about it has been. */
  async function isTold(change: () => void): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, 100));
    changed.mockClear();
    change();
    await vi.waitFor(() => expect(changed).toHaveBeenCalled(), { timeout: 5_000 });
  }
  const water = () => join(folder, 'systems/water.yaml');
  const replaced = (text: string) => () => {
    writeFileSync(join(folder, 'aside'), text);
    changed.mockClear();
    renameSync(join(folder, 'aside'), water());
  };

  it('tells of a file that is written to after others were put in its place, as publishing does', async () => {
    await isTold(replaced('1'));
    await isTold(replaced('2'));
    await isTold(() => writeFileSync(water(), '3'));
    await isTold(() => writeFileSync(water(), '4'));
  });

  it('tells of files in a folder that was made later', async () => {
    await isTold(() => mkdirSync(join(folder, 'vans')));
    await isTold(() => writeFileSync(join(folder, 'vans/wren.yaml'), 'a'));
    await isTold(() => writeFileSync(join(folder, 'vans/wren.yaml'), 'b'));
  });

  it('tells of nothing once it has ended', async () => {
    end();
    await new Promise((resolve) => setTimeout(resolve, 100));
    changed.mockClear();
    writeFileSync(water(), '1');
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(changed).not.toHaveBeenCalled();
  });
});
