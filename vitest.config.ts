import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/pinned-node.ts',
    // What putback keeps in its user's own folder: no test touches that of whoever runs it.
    env: { XDG_STATE_HOME: resolve(import.meta.dirname, 'node_modules/.cache/state') },
    // Ink's stdin handling leaks between renders of one process: a process for each file.
    pool: 'forks',
    isolate: true,
    testTimeout: 20_000,
    hookTimeout: 60_000,
  },
});
