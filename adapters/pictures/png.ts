import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import { INKS } from '../../src/index.ts';

const WIDTH = 800;

/** Family of the lettering; SVG shown by a browser falls back to the device's own sans-serif. */
export const LETTERING = 'Atkinson Hyperlegible';

/** Atkinson Hyperlegible Bold, SIL Open Font License 1.1: drawn to be told apart when small or blurred. */
const FONT = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf',
);

/** A PNG 800 pixels wide on the drawings' light paper. */
export function pngOf(svg: string): Buffer {
  const made = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH },
    background: INKS.light.paper,
    font: { fontFiles: [FONT], loadSystemFonts: false, defaultFontFamily: LETTERING, sansSerifFamily: LETTERING },
  });
  return Buffer.from(made.render().asPng());
}
