/* The only door by which adapters come in. */
export * from './basics/ids.ts';
export * from './basics/never.ts';
export * from './basics/time.ts';
export type * from './message/message.ts';
export type * from './ports/channel.ts';
export type * from './ports/clock.ts';
export type * from './ports/jobs.ts';
export type * from './ports/store.ts';
export * from './reply/reply.ts';
export type * from './calculators/types.ts';
export * from './thread/new-thread.ts';
export type * from './thread/thread.ts';
