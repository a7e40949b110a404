import { type FSWatcher, readdirSync, watch } from 'node:fs';
import { join } from 'node:path';

/**
 * Watches a folder and those in it, each by itself: the recursive watch of Node 20 on Linux loses a file that another was
 * renamed over, which is how publishing and many editors write.
 *
 * @param onChange Called after each change of a name or a file, several times for one.
 * @param onError  Called when a folder can no longer be watched.
 * @returns        Ends it.
 */
export function watchFolder(folder: string, onChange: () => void, onError: (error: unknown) => void): () => void {
  const watchers = new Map<string, FSWatcher>();
  const follow = (): void => {
    const inside = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isDirectory());
    const places = [folder, ...inside.map((entry) => join(entry.parentPath, entry.name))];
    for (const [place, watcher] of watchers) {
      if (places.includes(place)) continue;
      watcher.close();
      watchers.delete(place);
    }
    for (const place of places) {
      if (watchers.has(place)) continue;
      const watcher = watch(place, (event) => {
        try {
          if (event === 'rename') follow();
        } catch (error) {
          onError(error);
        }
        onChange();
      });
      watcher.on('error', (error) => {
        watchers.delete(place);
        watcher.close();
        onError(error);
      });
      watchers.set(place, watcher);
    }
  };
  follow();
  return () => {
    for (const watcher of watchers.values()) watcher.close();
  };
}
