import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // What a test waits for may take longer than the usual second.
    expect: { poll: { timeout: 10_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          // A browser keeps two cores busy by itself: two of them at once would wait for each other.
          maxWorkers: 1,
          globalSetup: 'tests/browser/built.ts',
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
