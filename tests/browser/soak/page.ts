import type { Outline } from '../../../src/session/api.ts';
import { Client } from '../../../src/worker/client.ts';
import type { BookService, Keeping, Opened, Restarted } from '../../../src/worker/protocol.ts';
import { Chance } from '../../fuzz/mutate.ts';
import { beginning, stepFor } from './work.ts';

// The page of the soak: the worker of the app, unchanged, and a person who never stops.

/** One step: what it was, and milliseconds until it was answered. */
export type Timed = readonly [kind: string, took: number];

/** What the tests reach from outside. */
export interface SoakReach {
  readonly service: BookService;
  readonly keepings: Keeping[];
  readonly restarts: Restarted[];
  begin(text: string): Promise<string>;
  /** Does steps `from` to `to`, and after each one asks for what the grid would show. */
  work(seed: number, from: number, to: number): Promise<Timed[]>;
  /** Opens the book from its journal, in a page that was loaded anew. Answers what was to be said about it. */
  reopen(id: string): Promise<readonly string[]>;
  /** Opens a saved book, in a session that has seen nothing of the work. */
  openFresh(saved: string): Promise<readonly string[]>;
  /** All that can be asked of the book, to compare. */
  answers(): Promise<{
    readonly saved: string;
    readonly sheets: readonly string[];
    readonly charts: readonly string[];
  }>;
}

const client = new Client(
  () => new Worker(new URL('../../../src/worker/worker.ts', import.meta.url), { type: 'module' }),
);
const { service } = client;
const keepings: Keeping[] = [];
const restarts: Restarted[] = [];
void service.follow((keeping) => {
  keepings[0] = keeping;
});
void service.onRestart((restarted) => restarts.push(restarted));

let outline: Outline;

const soak: SoakReach = {
  service,
  keepings,
  restarts,
  async begin(text) {
    const opened = await service.open(text, 'soak.leverbook.json');
    if (!opened.ok) throw new Error(opened.sentence);
    for (const command of beginning) {
      const done = await service.run(command);
      if (!done.ok) throw new Error(done.sentence);
      outline = done.outline;
    }
    return keepings[0]!.id!;
  },
  async work(seed, from, to) {
    const out: Timed[] = [];
    for (let k = from; k < to; k++) {
      const chance = new Chance((seed + k * 7919) >>> 0);
      const step = stepFor(outline, chance, k);
      const begun = performance.now();
      outline = (await step.run(service)) ?? outline;
      out.push([step.kind, performance.now() - begun]);
      const shown = chance.of(outline.sheets);
      const asked = performance.now();
      await service.tile(shown.id, Math.max(0, chance.n(shown.rows + 1) - 60), 60, 0, 12);
      out.push(['tile', performance.now() - asked]);
    }
    return out;
  },
  reopen: async (id) => take(await service.openStored(id)),
  openFresh: async (saved) => take(await service.open(saved, 'soak.leverbook.json')),
  async answers() {
    const { sheets, charts } = outline;
    return {
      saved: (await service.save()).text,
      sheets: await Promise.all(sheets.map(({ id }) => service.csv(id))),
      charts: await Promise.all(
        charts.map(({ key }) => service.chart(key).then(JSON.stringify, (reason: Error) => reason.message)),
      ),
    };
  },
};

function take(opened: Opened): readonly string[] {
  if (!opened.ok) throw new Error(opened.sentence);
  outline = opened.outline;
  return opened.notes;
}

Object.assign(globalThis, { soak });
