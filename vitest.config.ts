import { defineConfig } from 'vitest/config';

// Random tests try the same in every `npm test`, and something new in each long run.
const isLong = ['FUZZ', 'SOAK', 'KILLS', 'LEVERBOOK_RUNS', 'LEVERBOOK_ROUNDS'].some(
  (name) => process.env[name],
);
// This file is read once for each project below: the first reading draws.
if (!process.env.SEED) {
  process.env.SEED = String(isLong ? Date.now() % 1_000_000 : 20_250);
  if (isLong) console.log(`seed ${process.env.SEED} (SEED=${process.env.SEED} does it again)`);
}

/** What starts the command, a worker or a database of its own, and so needs a process that nothing was done in before. */
const apart = ['cli', 'store', 'worker'].map((folder) => `tests/${folder}/**/*.test.ts`);

export default defineConfig({
  test: {
    reporters: ['default', './tests/slowest.ts'],
    setupFiles: ['tests/seed.ts'],
    // No test has a limit of its own: what is asserted are states. These end only what would never end, on a busy machine too.
    testTimeout: isLong ? 3_600_000 : 240_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 30_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', ...apart],
          maxWorkers: 2,
          // Half the time went into reading the same modules for each file.
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'apart',
          include: apart,
          maxWorkers: 2,
          globalSetup: 'tests/cli/built.ts',
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          // Two files side by side, each process with one browser and its modules read once; a test waits more than it works.
          maxWorkers: 2,
          isolate: false,
          globalSetup: 'tests/browser/built.ts',
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
