import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/pinned-node.ts',
    // Ink's stdin handling leaks between renders of one process: a process for each file.
    pool: 'forks',
    isolate: true,
    testTimeout: 20_000,
    hookTimeout: 60_000,
  },
});
