import type { Finds } from '../pages/blocks.tsx';
import type { YardWorld } from './world.ts';

/** Where the yard's pages find drawings and what was sent along in a thread. */
export function findsFor(world: YardWorld, threadId: string): Finds {
  return {
    picture: (use, theme) =>
      world.pictureSvg(use, theme) === null
        ? null
        : `/yard/-/picture/${encodeURIComponent(use.picture)}/${encodeURIComponent(use.touch ?? '')}.${theme}.svg`,
    file: (file) => `/yard/thread/${encodeURIComponent(threadId)}/file/${encodeURIComponent(file)}`,
  };
}
