import { z } from 'zod';
import { id } from './schema.ts';

/** One notice in one language. Shown whole, first line first. */
export const noticeText = z.strictObject({
  /** The action, in the first line. */
  first: z.string().min(1),
  steps: z.array(z.string().min(1)).min(2).max(7),
  /** What stands under the steps: who may say it is over, what only licensed people may do. */
  after: z.string().min(1),
  /** Who has read a translation; null until a native speaker signed, and then the English stands with it. */
  read_by: z.string().nullable().default(null),
});

export const safety = z.strictObject({
  notices: z.record(id, z.strictObject({ level: z.enum(['danger', 'urgent', 'ask']), texts: z.record(z.string(), noticeText) })),
  reading: z.unknown(),
});

export type SafetyData = z.infer<typeof safety>;
export type NoticeText = z.infer<typeof noticeText>;
