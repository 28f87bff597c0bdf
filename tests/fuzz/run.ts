import { closeSync, mkdirSync, openSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { SEED } from '../seed.ts';
import { Chance } from './mutate.ts';

/** Inputs in all: 2,000 in every run, FUZZ=50000 in a long one. */
const ALL = Number(process.env.FUZZ ?? 2_000);

/** Milliseconds that one input may take. */
const LONGEST = 2_000;
/** Bytes that a run may hold more than at its beginning. */
const LARGEST = 1_500_000_000;

const natives = [Object, Array, Function, String, Number, Map, Set, Uint8Array].map(
  (type) => type.prototype as object,
);
const names = (): number => natives.reduce((sum, native) => sum + Reflect.ownKeys(native).length, 0);

export interface Tally {
  readonly inputs: number;
  readonly slowest: number;
  readonly counts: Readonly<Record<string, number>>;
}

/**
 * Does `one` with a share of all inputs. It answers a word for what came of the input, and throws when that is wrong. The
 * seed of the input at hand stands in a file while it is worked on, so that one that hangs is known afterwards.
 */
export async function fuzz(
  name: string,
  share: number,
  one: (chance: Chance) => string | Promise<string>,
): Promise<Tally> {
  const inputs = Math.max(1, Math.round(ALL * share));
  const folder = join(tmpdir(), 'leverbook-fuzz');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${name.replace(/\W+/g, '-')}-${process.pid}`);
  const noted = openSync(file, 'w');
  const before = names();
  const held = process.memoryUsage().rss;
  const counts: Record<string, number> = {};
  let slowest = 0;
  let slowestSeed = 0;
  const failures: string[] = [];
  try {
    for (let i = 0; i < inputs; i++) {
      const seed = (SEED + i * 7919) >>> 0;
      writeSync(noted, `SEED=${seed} FUZZ=1 input of ${name}          \n`, 0);
      const begun = performance.now();
      let outcome: string;
      try {
        const came = one(new Chance(seed));
        outcome = typeof came === 'string' ? came : await came;
      } catch (reason) {
        const why = reason instanceof Error ? (reason.stack ?? reason.message) : String(reason);
        failures.push(`SEED=${seed} FUZZ=1: ${why}`);
        if (failures.length >= 5) break;
        continue;
      }
      const took = performance.now() - begun;
      if (took > slowest) [slowest, slowestSeed] = [took, seed];
      expect(took, `${name}: milliseconds for the input with SEED=${seed} (${outcome})`).toBeLessThan(
        LONGEST,
      );
      counts[outcome] = (counts[outcome] ?? 0) + 1;
      expect(names(), `${name}: own names of the built-in prototypes after SEED=${seed}`).toBe(before);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      if (i % 200 === 0)
        expect(process.memoryUsage().rss - held, `${name}: bytes held`).toBeLessThan(LARGEST);
    }
  } finally {
    closeSync(noted);
  }
  console.log(
    `${name}: ${inputs} inputs from seed ${SEED}, slowest ${slowest.toFixed(0)} ms (SEED=${slowestSeed}): ${Object.entries(
      counts,
    )
      .map(([outcome, count]) => `${outcome} ${count}`)
      .join(', ')}`,
  );
  expect(failures, `${name}: what went wrong, each with what does it again`).toEqual([]);
  return { inputs, slowest, counts };
}
