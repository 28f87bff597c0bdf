import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildAndServeFrom, launch, type Served, type Watched } from './browser.ts';
import { outcomesOfCalls } from './digits/calls.ts';

let served: Served;
let watched: Watched;
beforeAll(async () => {
  served = await buildAndServeFrom(`${import.meta.dirname}/digits`);
  watched = await launch(served.address);
});
afterAll(async () => {
  await watched?.close();
  await served?.close();
});

test('20,000 calls over all functions give the same bits in the browser and on the command line', async () => {
  const here = outcomesOfCalls(20_000);
  const there = await watched.page.evaluate(
    (count) => (globalThis as unknown as { outcomesOfCalls(n: number): string[] }).outcomesOfCalls(count),
    20_000,
  );
  expect(there.filter((outcome, i) => outcome !== here[i])).toEqual([]);
  expect(there.length).toBe(here.length);
  // Most of these are numbers, and seldom the same: the comparison is not one of errors.
  const numbers = here.filter((outcome) => /^\S+ [0-9a-f]+ [0-9a-f]+$/.test(outcome));
  expect(numbers.length).toBeGreaterThan(14_000);
  expect(new Set(numbers).size).toBeGreaterThan(12_000);
});
