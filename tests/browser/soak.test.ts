import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { CDPSession } from 'playwright-core';
import { expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { plainLocale } from '../../src/units/locale.ts';
import { SEED } from '../seed.ts';
import { buildAndServeFrom, launch } from './browser.ts';
import type { SoakReach, Timed } from './soak/page.ts';

/** Commands: a few hundred in every run, SOAK=10000 in a long one. */
const STEPS = Number(process.env.SOAK ?? 300);
/** In a long run: steps before the first measure, until undo reaches back as far as it ever will. */
const WARMING = STEPS >= 5_000 ? 1_200 : 0;
const TENTHS = 10;

declare const soak: SoakReach;

/** Bytes that the worker holds once its rubbish is collected: objects, and what its arrays stand in. */
async function heapOf(session: CDPSession, targetId: string): Promise<number> {
  const { sessionId } = await session.send('Target.attachToTarget', { targetId, flatten: false });
  let id = 0;
  const ask = (method: string): Promise<Record<string, number>> =>
    new Promise((resolve) => {
      const mine = ++id;
      const hear = ({ message }: { message: string }): void => {
        const told = JSON.parse(message) as { id?: number; result: Record<string, number> };
        if (told.id !== mine) return;
        session.off('Target.receivedMessageFromTarget', hear);
        resolve(told.result);
      };
      session.on('Target.receivedMessageFromTarget', hear);
      void session.send('Target.sendMessageToTarget', {
        sessionId,
        message: JSON.stringify({ id: mine, method }),
      });
    });
  await ask('HeapProfiler.collectGarbage');
  const { usedSize = 0, backingStorageSize = 0 } = await ask('Runtime.getHeapUsage');
  await session.send('Target.detachFromTarget', { sessionId });
  return usedSize + backingStorageSize;
}

/** Long numbers to ten digits. */
const rounded = (csv: string): string =>
  csv.replace(/-?\d+\.\d{8,}(e-?\d+)?/g, (number) => Number(number).toPrecision(10));

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
const spread = (times: readonly number[]) => {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: quantile(sorted, 0.5), most: quantile(sorted, 0.95), worst: sorted.at(-1) ?? Number.NaN };
};

test(
  `${STEPS} commands one after the other: the answers are those of the journal and of the saved file; heap and latency are printed`,
  async () => {
    console.log(`seed ${SEED} (SEED=${SEED} SOAK=${STEPS} does it again)`);
    const served = await buildAndServeFrom(join(import.meta.dirname, 'soak'));
    const watched = await launch(served.address);
    try {
      const { page, context } = watched;
      const sample = await readFile(
        join(import.meta.dirname, '../../sample-books/squat-screening.leverbook.json'),
        'utf8',
      );
      const id = await page.evaluate((text) => soak.begin(text), sample);
      const session = await context.browser()!.newBrowserCDPSession();
      const { targetInfos } = await session.send('Target.getTargets');
      const { targetId } = targetInfos.find(({ type }) => type === 'worker')!;
      const work = (from: number, to: number): Promise<Timed[]> =>
        page.evaluate(([seed, from, to]) => soak.work(seed, from, to), [SEED, from, to] as const);

      if (WARMING > 0) await work(0, WARMING);
      const tenths: { readonly times: Timed[]; readonly heap: number }[] = [];
      const before = await heapOf(session, targetId);
      for (let tenth = 0; tenth < TENTHS; tenth++) {
        const from = WARMING + Math.round((STEPS * tenth) / TENTHS);
        const times = await work(from, WARMING + Math.round((STEPS * (tenth + 1)) / TENTHS));
        tenths.push({ times, heap: await heapOf(session, targetId) });
      }
      report(tenths, before);
      expect(await page.evaluate(() => soak.restarts.length)).toBe(0);
      expect(await page.evaluate(() => soak.keepings[0]!.state)).toBe('kept');

      const answers = await page.evaluate(() => soak.answers());
      // A session that never saw the work, from the saved file alone.
      expect(await page.evaluate((saved) => soak.openFresh(saved), answers.saved)).toEqual([]);
      expect(await page.evaluate(() => soak.answers())).toEqual(answers);
      // The book as its journal has it.
      await page.reload();
      expect(await page.evaluate((id) => soak.reopen(id), id)).toEqual([]);
      expect(await page.evaluate(() => soak.answers())).toEqual(answers);
      // And without a browser: sines and the like may differ in their last digit there.
      const alone = Session.open(answers.saved, { locale: plainLocale });
      expect(alone.save()).toBe(answers.saved);
      const { sheets, charts } = alone.outline();
      expect(sheets.map(({ id }) => rounded(alone.toCsv(id)))).toEqual(answers.sheets.map(rounded));
      expect(charts.length).toBeGreaterThanOrEqual(4);
    } finally {
      await watched.close();
      await served.close();
    }
  },
  120_000 + STEPS * 400,
);

function report(tenths: readonly { readonly times: Timed[]; readonly heap: number }[], before: number): void {
  const [first, last] = [tenths[0]!, tenths.at(-1)!];
  const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);
  console.log(
    `heap MB, before and after each tenth: ${[before, ...tenths.map(({ heap }) => heap)].map(megabytes).join(' ')}`,
  );
  const all = (times: readonly Timed[], tile: boolean): number[] =>
    times.flatMap(([kind, took]) => ((kind === 'tile') === tile ? [took] : []));
  for (const tile of [false, true]) {
    const [a, z] = [spread(all(first.times, tile)), spread(all(last.times, tile))];
    const worst = Math.max(...tenths.map(({ times }) => spread(all(times, tile)).worst));
    console.log(
      `${tile ? 'tiles' : 'commands'}: median ${a.median.toFixed(1)} → ${z.median.toFixed(1)} ms (×${(z.median / a.median).toFixed(2)}), 95 % within ${a.most.toFixed(1)} → ${z.most.toFixed(1)} ms (×${(z.most / a.most).toFixed(2)}), worst of all ${worst.toFixed(0)} ms`,
    );
  }
  console.log(`heap, last tenth against first: ×${(last.heap / first.heap).toFixed(2)}`);
  const kinds = new Map<string, { count: number; first: number[]; last: number[] }>();
  for (const [n, { times }] of tenths.entries())
    for (const [kind, took] of times) {
      const of = kinds.get(kind) ?? { count: 0, first: [], last: [] };
      kinds.set(kind, of);
      of.count++;
      // Halves, as the rare ones are too few for tenths.
      (n < tenths.length / 2 ? of.first : of.last).push(took);
    }
  for (const [kind, { count, first, last }] of [...kinds].sort(([, a], [, b]) => b.count - a.count)) {
    const [a, z] = [spread(first), spread(last)];
    console.log(
      `  ${kind}: ${count}, median ${a.median.toFixed(1)} → ${z.median.toFixed(1)} ms by halves, worst ${Math.max(a.worst || 0, z.worst || 0).toFixed(0)} ms`,
    );
  }
}
