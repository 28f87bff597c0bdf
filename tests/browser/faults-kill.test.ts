import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { readingFile } from '../../src/session/imports/read-file.ts';
import { Session } from '../../src/session/session.ts';
import { SEED } from '../seed.ts';
import type { Served } from './browser.ts';
import { profile, serveFaults, start } from './faults/mortal.ts';
import type { Reach } from './faults/page.ts';
import { type Phase, phases, type Turned } from './faults/phases.ts';
import { beginning, decisions, NOW, type Step, stepAt } from './faults/work.ts';

/** How often the browser is killed: a few times in every run, KILLS=200 in a long one. */
const KILLS = Number(process.env.KILLS ?? 8);
/** Steps under way at the same time. */
const AT_ONCE = 3;
/** Where a kill is aimed: while the book opens, in a phase of the worker, or anywhere in the work. */
const aims = ['opening', 'any moment', ...phases] as const;
type Aim = (typeof aims)[number];
/** After so many milliseconds without the phase it is killed as it is. */
const LONGEST = 6_000;

let served: Served;
beforeAll(async () => {
  vi.stubGlobal('navigator', { language: 'en-GB' });
  vi.spyOn(Date.prototype, 'toISOString').mockReturnValue(NOW);
  served = await serveFaults();
});
afterAll(async () => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  await served.close();
});

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
  async do(step: Step): Promise<boolean> {
    if (step.do === 'import') {
      const task = await readingFile(
        this.session,
        new TextEncoder().encode(step.text),
        'measured.csv',
        decisions,
      );
      for (let one = task.next(); ; one = task.next())
        if (one.done) {
          const done = this.session.writePlanned(one.value.prepared);
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

/** The next moment to kill at: in the phase, soon after it began. Answers whether it was still in it. */
class Aiming {
  private readonly at = new Set<Phase>();
  private wanted: { readonly phase: Phase; readonly begun: () => void } | undefined;

  turned = ({ phase, on }: Turned): void => {
    if (on) this.at.add(phase);
    else this.at.delete(phase);
    if (on && phase === this.wanted?.phase) this.wanted.begun();
  };

  async moment(aim: Aim): Promise<() => boolean> {
    await passing(30 + chance(aim === 'any moment' ? 1_500 : 500));
    if (aim === 'any moment' || aim === 'opening') return () => true;
    const begun = await new Promise<boolean>((resolve) => {
      const late = setTimeout(() => resolve(false), LONGEST);
      this.wanted = {
        phase: aim,
        begun: () => {
          clearTimeout(late);
          resolve(true);
        },
      };
    });
    // Some of these phases last a millisecond or two.
    const delay = chance(4) * chance(4);
    if (begun && delay > 0) await passing(delay);
    return () => begun && this.at.has(aim);
  }
}

const passing = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

test(
  `the browser is killed ${KILLS} times, at random moments and in each phase of its work: nothing answered is lost, and the book equals one that nobody killed`,
  async () => {
    console.log(`seed ${SEED} (SEED=${SEED} does it again)`);
    const home = await profile();
    const twin = new Twin();
    for (const step of beginning) expect(await twin.do(step)).toBe(true);
    const wrong: string[] = [];
    let next = 0;
    let answered = 0;
    let id = '';
    /** Names of versions, the newest first. */
    const versions: string[] = [];
    const seen = { kills: 0, answered: 0, steps: 0, unanswered: 0, deleted: 0, rounds: 0 };
    const aimed = new Map<Aim, { kills: number; inside: number }>(
      aims.map((aim) => [aim, { kills: 0, inside: 0 }]),
    );
    const killed = (aim: Aim, inside: boolean): void => {
      seen.kills++;
      aimed.get(aim)!.kills++;
      if (inside) aimed.get(aim)!.inside++;
    };
    try {
      for (let round = 0; round <= KILLS; round++) {
        const mortal = await start(home, served.address);
        const { page } = mortal;
        const aim = aims[chance(aims.length)]!;
        try {
          if (round === 0) {
            id = await page.evaluate(begin as (steps: unknown) => Promise<string>, beginning as unknown);
          } else if (round < KILLS && aim === 'opening') {
            // While it opens and recalculates.
            void page.evaluate((id) => reach.service.openStored(id), id).catch(() => undefined);
            await passing(chance(250));
            await mortal.kill();
            killed(aim, true);
            continue;
          } else {
            const found = await page.evaluate(reopen, id);
            if (found.notes.length > 0) {
              // The browser found its database damaged and has deleted all of it.
              seen.deleted++;
              expect(found.notes).toEqual([
                expect.stringMatching(/has lost its saved copy of.*restored from its second journal/),
              ]);
            }
            expect(found.versions).toEqual(versions);
            // The twin does what the journal holds, and no more.
            let done = 0;
            while (twin.sequence < found.sequence) {
              await twin.do(stepAt(SEED, next, start0));
              next++;
              done++;
            }
            seen.rounds++;
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
          if (versions.length <= round / 10) {
            const name = `Round ${round}`;
            expect(await page.evaluate((name) => reach.service.keepVersion(name), name)).toMatchObject({
              ok: true,
            });
            versions.unshift(name);
          }
          const from = next;
          start0 = from;
          answered = from;
          const early = new Set<number>();
          await page.exposeFunction('told', (k: number) => {
            // A refusal is answered at once, before the changes that were asked for earlier: they may still be lost.
            early.add(k);
            for (; early.delete(answered); answered++) seen.answered++;
          });
          const aiming = new Aiming();
          await page.exposeFunction('turned', aiming.turned);
          const order: Order = { seed: SEED, from, atOnce: AT_ONCE };
          void page.evaluate(work, order).catch((reason: Error) => {
            if (!/closed|crashed/.test(reason.message)) wrong.push(reason.message);
          });
          const inside = await aiming.moment(round === 0 ? 'any moment' : aim);
          const there = inside();
          await mortal.kill();
          killed(round === 0 ? 'any moment' : aim, there);
        } finally {
          await mortal.kill();
        }
      }
    } finally {
      await rm(home, { recursive: true, force: true });
    }
    console.log(
      `${seen.kills} kills, ${seen.answered} answered steps, all there after each; ${seen.steps} steps found again, ${seen.unanswered} of them stored but not answered yet; ${twin.sequence} entries and ${versions.length} versions in all; the book was compared ${seen.rounds} times`,
    );
    console.log(
      `aimed at: ${[...aimed].map(([aim, { kills, inside }]) => `${aim} ${kills} (${inside} still in it)`).join(', ')}`,
    );
    console.log(
      `the browser itself found its database damaged after a kill and deleted it ${seen.deleted} times`,
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
declare const turned: (turned: Turned) => void;

async function begin(steps: typeof beginning): Promise<string> {
  await reach.service.blank();
  for (const step of steps) {
    const done = await reach.service.run(step);
    if (!done.ok) throw new Error(done.sentence);
  }
  return reach.keepings.at(-1)!.id!;
}

async function reopen(id: string) {
  const opened = await reach.service.openStored(id);
  if (!opened.ok) throw new Error(opened.sentence);
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
    notes: opened.notes,
    versions: (await reach.service.versions()).map(({ name }) => name),
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
  reach.onTurn = turned;
  const running: Promise<void>[] = [];
  for (let k = from; ; k++) {
    const { service } = reach;
    const step = reach.stepAt(seed, k, from);
    if (step.do === 'import') {
      // A file is read for the book as it stands: nothing else is under way.
      await Promise.all(running.splice(0));
      const read = await service.readFile(new Blob([step.text]), 'measured.csv', reach.decisions);
      if (!read.ok) throw new Error(read.sentence);
      const done = await service.importFile();
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
