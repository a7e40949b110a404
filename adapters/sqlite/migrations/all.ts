import type { Migration } from 'kysely';
import { whatIsKept } from './0001-what-is-kept.ts';

/** Every migration by its number and name, named here one by one so that bundling takes them along. Never renamed. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-what-is-kept': whatIsKept,
};
