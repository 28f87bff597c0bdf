import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildAndServeFrom, launch, type Served, type Watched } from './browser.ts';
import { outcomesOfCalls } from './digits/calls.ts';
import { outcomesOfFormulas } from './digits/formulas.ts';

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

const ways = { outcomesOfCalls, outcomesOfFormulas };

/** What differs between the browser and here, and what was computed. */
async function compared(way: keyof typeof ways, count: number): Promise<{ here: string[]; other: string[] }> {
  const here = ways[way](count);
  const there = await watched.page.evaluate(
    ([name, calls]) => (globalThis as unknown as typeof ways)[name](calls),
    [way, count] as const,
  );
  expect(there.length).toBe(here.length);
  return { here, other: there.filter((outcome, i) => outcome !== here[i]) };
}

const numbersIn = (outcomes: readonly string[]): string[] =>
  outcomes.filter((outcome) => / [0-9a-f]+ [0-9a-f]+$/.test(outcome));

test('20,000 calls over all functions give the same bits in the browser and on the command line', async () => {
  const { here, other } = await compared('outcomesOfCalls', 20_000);
  expect(other).toEqual([]);
  // Most of these are numbers, and seldom the same: the comparison is not one of errors.
  const numbers = numbersIn(here).filter((outcome) => /^\S+ \S+ \S+$/.test(outcome));
  expect(numbers.length).toBeGreaterThan(14_000);
  expect(new Set(numbers).size).toBeGreaterThan(12_000);
});

test('so do 20,000 formulas of exp, logarithms, powers and angles, in columns and in free cells', async () => {
  const { here, other } = await compared('outcomesOfFormulas', 20_000);
  expect(other).toEqual([]);
  expect(here.length).toBeGreaterThan(20_000);
  expect(numbersIn(here).length).toBeGreaterThan(0.9 * here.length);
});
