import { bench, describe } from 'vitest';
import { createPictures } from '../../adapters/pictures/pictures.ts';
import { touched } from '../../adapters/pictures/touched.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

/* Aims of the drawings: a PNG of 800 by 600 under 60 ms the first time and under 2 ms from the cache. */
const { pictures } = realKnowledge();
const names = [...pictures.keys()];
const warm = createPictures(() => pictures);
await warm.png({ picture: 'fuse-box-dunlin', touch: 'f3' });
let turn = 0;

describe('a picture', () => {
  bench('PNG of a drawing not seen before', async () => {
    const picture = names[turn++ % names.length] ?? '';
    await createPictures(() => pictures).png({ picture, touch: null });
  });
  bench('PNG from the cache', async () => {
    await warm.png({ picture: 'fuse-box-dunlin', touch: 'f3' });
  });
  bench('SVG with its ring', () => {
    touched(pictures.get('fuse-box-dunlin')?.svg ?? '', 'f3', 'dark');
  });
});
