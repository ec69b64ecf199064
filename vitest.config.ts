import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Tests that start processes, hold locks, look at memory or open terminals. */
const OUTSIDE = [
  'tests/*.test.ts',
  'tests/{commands,diary,find/index,job/save,lint,readme,screens/terminal,terminal}/**/*.test.ts',
  'tests/paper/{browser,desk}/**/*.test.ts',
  'tests/job/mutations.test.ts',
];

const common = {
  setupFiles: 'tests/seeded.ts',
  // ms. Only how long a failing test takes: the machine may be busy with other things.
  testTimeout: 120_000,
  hookTimeout: 120_000,
};

const PROCESSORS = availableParallelism();
/** What opens terminals and runs git mostly waits: one more of them keeps all processors busy. They come first. */
const waiting = { maxWorkers: PROCESSORS + 1, sequence: { groupOrder: 0 } };

export default defineConfig({
  test: {
    globalSetup: 'tests/surroundings.ts',
    // A worker takes file after file and loads the sources once.
    isolate: false,
    maxWorkers: PROCESSORS,
    projects: [
      {
        extends: true,
        test: {
          ...common,
          name: 'pure',
          pool: 'threads',
          sequence: { groupOrder: 1 },
          include: ['tests/**/*.test.ts'],
          exclude: OUTSIDE,
        },
      },
      {
        extends: true,
        test: { ...common, ...waiting, name: 'outside', pool: 'forks', include: OUTSIDE },
      },
      {
        // Ink's handling of stdin leaks between renders of one process.
        extends: true,
        test: {
          ...common,
          ...waiting,
          name: 'ink',
          pool: 'forks',
          isolate: true,
          include: ['tests/**/*.test.tsx'],
        },
      },
    ],
  },
});
