import { defineConfig } from 'vitest/config';

// One worker a core: the browser tests start a Chromium of their own, and two cores carry no more.
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // What a test waits for may take longer than the usual second.
    expect: { poll: { timeout: 10_000 } },
  },
});
