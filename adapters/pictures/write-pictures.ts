import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Knowledge } from '../../src/index.ts';
import { contactSheet, contactSheetHtml } from './contact-sheet.ts';
import { createPictures } from './pictures.ts';

/**
 * Writes every drawing into a folder, for a look: bare as PNG, and two pages, light.html and dark.html, that show each
 * with the parts that answers have touched.
 *
 * @returns The number of drawings. Throws the file system's error when the folder cannot be written.
 */
export async function writePictures(knowledge: Knowledge, folder: string): Promise<number> {
  const pictures = createPictures(() => knowledge.pictures);
  mkdirSync(folder, { recursive: true });
  for (const picture of knowledge.pictures.keys())
    writeFileSync(join(folder, `${picture}.png`), await pictures.png({ picture, touch: null }));
  for (const theme of ['light', 'dark'] as const) {
    const rows = contactSheetHtml(contactSheet(knowledge), pictures, theme);
    writeFileSync(
      join(folder, `${theme}.html`),
      `<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings, ${theme}</title><style>body{font:16px sans-serif;color-scheme:${theme}}figure{display:inline-block;width:360px;margin:4px;vertical-align:top}</style>\n${rows}\n</html>\n`,
    );
  }
  return knowledge.pictures.size;
}
