import type { PictureUse } from '../../src/index.ts';
import type { Finds } from '../pages/blocks.tsx';
import type { Theme } from '../pages/colours.ts';
import type { YardWorld } from './world.ts';

/** Where a drawing is, with the part to touch ringed. */
export function pictureAt({ picture, touch }: Pick<PictureUse, 'picture' | 'touch'>, theme: Theme): string {
  return `/yard/-/picture/${encodeURIComponent(picture)}/${encodeURIComponent(touch ?? '')}.${theme}.svg`;
}

/** Where the yard's pages find drawings and what was sent along in a thread. */
export function findsFor(world: YardWorld, threadId: string): Finds {
  return {
    picture: (use, theme) => (world.pictureSvg(use, theme) === null ? null : pictureAt(use, theme)),
    file: (file) => `/yard/thread/${encodeURIComponent(threadId)}/file/${encodeURIComponent(file)}`,
  };
}
