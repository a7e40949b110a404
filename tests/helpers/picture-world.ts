import { contactSheet } from '../../adapters/pictures/contact-sheet.ts';
import { createPictures } from '../../adapters/pictures/pictures.ts';
import type { Growth } from '../../adapters/yard/growth-world.ts';
import { type Heat, heatOf, type Knowledge } from '../../src/index.ts';
import { pageScript } from './page-scripts.ts';
import { chatWorld, NO_GROWTH, type PagesWorld } from './pages-world.ts';

/** Some that were asked and some that did not help, the same at every run. */
export function someHeat(knowledge: Knowledge): ReadonlyMap<string, Heat> {
  const topics = [...knowledge.topics.keys()];
  const failed = topics.flatMap((topic, i) => Array.from({ length: i % 9 === 0 ? i % 5 : 0 }, () => topic));
  return heatOf(
    topics.flatMap((topic, i) =>
      Array.from({ length: (i * 7) % 23 }, () => ({ kind: 'answered', topic, probability: 1 }) as const),
    ),
    failed.map((topic) => ({ nearest: [topic], why: 'did-not-help' })),
  );
}

/** The yard's pages over a graph, with its drawings and the picture's script. */
export function pictureWorld(knowledge: Knowledge, change: Partial<Growth> = {}): Promise<PagesWorld> {
  return chatWorld({
    yard: {
      growth: { ...NO_GROWTH, knowledge: () => knowledge, heat: async () => someHeat(knowledge), ...change },
      drawings: () => contactSheet(knowledge),
      pictureSvg: createPictures(() => knowledge.pictures).svg,
      pictureScript: pageScript('adapters/yard/page/graph-picture.ts'),
    },
  });
}
