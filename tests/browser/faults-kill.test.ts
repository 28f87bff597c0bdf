import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { reading } from '../../src/worker/reading.ts';
import type { Served } from './browser.ts';
import { profile, serveFaults, start } from './faults/mortal.ts';
import type { Reach } from './faults/page.ts';
import { beginning, decisions, NOW, type Step, stepAt } from './faults/work.ts';

/** How often the browser is killed: a few times in every run, KILLS=200 in a long one. */
const KILLS = Number(process.env.KILLS ?? 8);
const SEED = Number(process.env.SEED ?? Date.now() % 1_000_000);
/** Steps under way at the same time. */
const AT_ONCE = 3;

let served: Served;
beforeAll(async () => {
  vi.stubGlobal('navigator', { language: 'en-GB' });
  vi.spyOn(Date.prototype, 'toISOString').mockReturnValue(NOW);
  served = await serveFaults();
});
afterAll(() => served.close());

/** The same work without a browser, a journal or a kill. */
class Twin {
  session = Session.create();
  /** Changes that were recorded: the sequence that a journal would have. */
  sequence = 0;
  constructor() {
    this.session.onRecord = () => {
      this.sequence++;
    };
  }
  /** Goes on from a book that came back from elsewhere. */
  from(text: string, sequence: number): void {
    const { onRecord } = this.session;
    this.session = Session.open(text);
    this.session.onRecord = onRecord;
    this.sequence = sequence;
  }
  async do(step: Step): Promise<boolean> {
    if (step.do === 'bring in') {
      const task = await reading(
        this.session,
        new TextEncoder().encode(step.text),
        'measured.csv',
        decisions,
      );
      for (let one = task.next(); ; one = task.next())
        if (one.done) {
          const done = this.session.bringIn(one.value.prepared);
          for (const _ of this.session.recalculate());
          return done.ok;
        }
    }
    if (step.do === 'undo') return this.session.undo().ok;
    if (step.do === 'redo') return this.session.redo().ok;
    return this.session.execute(step).ok;
  }
}

/** What the page does until it is killed: step after step, each told once it is answered. */
interface Order {
  readonly seed: number;
  readonly from: number;
  readonly atOnce: number;
}

let random = SEED;
function chance(below: number): number {
  random = (Math.imul(random, 1664525) + 1013904223) >>> 0;
  return random % below;
}

test(
  `the browser is killed ${KILLS} times at random moments: nothing answered is lost, and the book equals one that nobody killed`,
  async () => {
    console.log(`seed ${SEED} (SEED=${SEED} does it again)`);
    const home = await profile();
    const twin = new Twin();
    for (const step of beginning) expect(await twin.do(step)).toBe(true);
    const wrong: string[] = [];
    let next = 0;
    let answered = 0;
    let id = '';
    const seen = {
      kills: 0,
      answered: 0,
      steps: 0,
      opening: 0,
      unanswered: 0,
      deleted: 0,
      behind: [] as number[],
    };
    /** How the book stood after each step that was found again. */
    const states: string[] = [twin.session.save()];
    /** How many answered steps a second copy lacks; negative when the book never stood so. */
    const stepsBehind = async (text: string): Promise<number> => {
      for (let k = next; k < answered + AT_ONCE; k++) {
        await twin.do(stepAt(SEED, k, start0));
        states.push(twin.session.save());
      }
      const at = states.lastIndexOf(text);
      const behind = at < 0 ? -1 : Math.max(0, states.length - 1 - AT_ONCE - at);
      states.splice(0, states.length, text);
      return behind;
    };
    try {
      for (let round = 0; round <= KILLS; round++) {
        const mortal = await start(home, served.address);
        const { page } = mortal;
        try {
          if (round === 0) {
            id = await page.evaluate(begin as (steps: unknown) => Promise<string>, beginning as unknown);
          } else if (round < KILLS && chance(5) === 0) {
            // Killed while it opens and recalculates.
            void page.evaluate((id) => reach.service.openStored(id), id).catch(() => undefined);
            await new Promise((resolve) => setTimeout(resolve, chance(250)));
            await mortal.kill();
            seen.opening++;
            seen.kills++;
            continue;
          } else {
            const found = await page.evaluate(reopen, id);
            if (found.id !== id) {
              // The browser found its database damaged and has deleted all of it: the book is back from its second copy.
              seen.deleted++;
              expect(found.notes).toEqual([expect.stringContaining('has lost the storage')]);
              const behind = await stepsBehind(found.text);
              expect(behind).toBeGreaterThanOrEqual(0);
              seen.behind.push(behind);
              twin.from(found.text, found.sequence);
              id = found.id;
              next = answered;
            } else expect(found.notes).toEqual([]);
            // The twin does what the journal holds, and no more.
            let done = 0;
            while (twin.sequence < found.sequence) {
              await twin.do(stepAt(SEED, next, start0));
              states.push(twin.session.save());
              if (states.length > 300) states.shift();
              next++;
              done++;
            }
            seen.steps += done;
            seen.unanswered += Math.max(0, next - answered);
            // Steps that were answered but change nothing leave no entry behind the last one.
            for (; next < answered; next++) {
              await twin.do(stepAt(SEED, next, start0));
              expect(twin.sequence).toBe(found.sequence);
            }
            expect(twin.session.save()).toBe(found.text);
            for (const [n, name] of ['log', 'summary', 'measured'].entries())
              expect(twin.session.toCsv(name)).toBe(found.sheets[n]);
          }
          if (round === KILLS) break;
          const from = next;
          start0 = from;
          answered = from;
          const early = new Set<number>();
          await page.exposeFunction('told', (k: number) => {
            // A refusal is answered at once, before the changes that were asked for earlier: they may still be lost.
            early.add(k);
            for (; early.delete(answered); answered++) seen.answered++;
          });
          const order: Order = { seed: SEED, from, atOnce: AT_ONCE };
          void page.evaluate(work, order).catch((reason: Error) => {
            if (!/closed|crashed/.test(reason.message)) wrong.push(reason.message);
          });
          await new Promise((resolve) => setTimeout(resolve, 30 + chance(1_500)));
          await mortal.kill();
          seen.kills++;
        } finally {
          await mortal.kill();
        }
      }
    } finally {
      await rm(home, { recursive: true, force: true });
    }
    console.log(
      `${seen.kills} kills (${seen.opening} while opening), ${seen.answered} answered steps, ${seen.steps} steps found again, ${seen.unanswered} of them stored but not answered yet; ${twin.sequence} entries in all`,
    );
    if (seen.deleted > 0)
      console.log(
        `${seen.deleted} times the browser itself found its database damaged after a kill and deleted it; the second copies were ${seen.behind.join(', ')} answered steps behind`,
      );
    expect(wrong).toEqual([]);
    expect(seen.kills).toBe(KILLS);
    expect(seen.answered).toBeGreaterThan(0);
  },
  60_000 + KILLS * 15_000,
);

let start0 = 0;
declare const reach: Reach;
declare const told: (k: number) => void;

async function begin(steps: typeof beginning): Promise<string> {
  await reach.service.blank();
  for (const step of steps) {
    const done = await reach.service.run(step);
    if (!done.ok) throw new Error(done.sentence);
  }
  return reach.keepings.at(-1)!.id!;
}

async function reopen(id: string) {
  let opened = await reach.service.openStored(id);
  if (!opened.ok) {
    const [back] = await reach.service.books();
    if (!back) throw new Error(opened.sentence);
    id = back.id;
    opened = await reach.service.openStored(id);
    if (!opened.ok) throw new Error(opened.sentence);
  }
  const head = await new Promise<number>((resolve, reject) => {
    const opening = indexedDB.open('leverbook');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const got = opening.result.transaction('books').objectStore('books').get(id);
      got.onsuccess = () => {
        opening.result.close();
        resolve(got.result.head);
      };
    };
  });
  return {
    id,
    notes: opened.notes,
    sequence: head,
    text: (await reach.service.save()).text,
    sheets: [
      await reach.service.csv('log'),
      await reach.service.csv('summary'),
      await reach.service.csv('measured'),
    ],
  };
}

async function work({ seed, from, atOnce }: Order): Promise<void> {
  const running: Promise<void>[] = [];
  for (let k = from; ; k++) {
    const { service } = reach;
    const step = reach.stepAt(seed, k, from);
    if (step.do === 'bring in') {
      // A file is read for the book as it stands: nothing else is under way.
      await Promise.all(running.splice(0));
      const read = await service.readFile(new Blob([step.text]), 'measured.csv', reach.decisions);
      if (!read.ok) throw new Error(read.sentence);
      const done = await service.bringIn();
      if (!done.ok) throw new Error(done.sentence);
      told(k);
      continue;
    }
    const done =
      step.do === 'undo' ? service.undo() : step.do === 'redo' ? service.redo() : service.run(step);
    running.push(done.then(() => told(k)));
    if (running.length >= atOnce) await running.shift();
  }
}
