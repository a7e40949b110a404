import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { learningDefines } from './learning.mjs';

export default defineConfig(async () => ({
  define: await learningDefines(),
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // A browser on a busy machine settles late.
    expect: { poll: { timeout: 10_000 } },
  },
}));
