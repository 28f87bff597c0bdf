import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Computing } from '../../src/worker/protocol.ts';
import { Watchdog } from '../../src/worker/watchdog.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const computing = { place: { sheet: 'roster', column: 'lean', row: 0 }, exact: true } as unknown as Computing;

/** What a watchdog says of a worker that owes an answer and says nothing for `wait` milliseconds after what it `tells`. */
function said(tells: (dog: Watchdog) => void, wait: number, patience: { formula: number; silence: number }) {
  const told: string[] = [];
  const dog: Watchdog = new Watchdog(
    {
      hung: () => {
        told.push('formula');
        dog.anew();
      },
      silent: () => {
        told.push('silence');
        dog.anew();
      },
      owes: () => told.length === 0,
    },
    patience,
  );
  tells(dog);
  vi.advanceTimersByTime(wait);
  dog.stop();
  return told;
}

test('a formula that does not come back is named, whichever clock notices it', () => {
  const begun = (dog: Watchdog) => dog.begins(computing);
  expect(said(begun, 3_000, { formula: 2_000, silence: 30_000 })).toEqual(['formula']);
  expect(said(begun, 4_000, { formula: 50_000, silence: 3_000 })).toEqual(['formula']);
});

test('a worker that stops between formulas is silent, and one that answers in time is neither', () => {
  const ended = (dog: Watchdog) => {
    dog.begins(computing);
    dog.begins(null);
  };
  expect(said(ended, 4_000, { formula: 2_000, silence: 3_000 })).toEqual(['silence']);
  expect(said(ended, 2_500, { formula: 2_000, silence: 3_000 })).toEqual([]);
});
