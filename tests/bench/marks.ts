import type { Tile } from '../../src/session/api.ts';
import type { Command } from '../../src/session/commands/index.ts';
import type { RuleDraft } from '../../src/session/marks/draft.ts';
import { Session } from '../../src/session/session.ts';
import { type Bench, timed } from './measure.ts';

const TIMES = 21;
/** What a grid asks for at once. */
const SCREEN = 64;

const rules: readonly RuleDraft[] = [
  { is: 'above', to: 'limit', tone: 'attend' },
  { is: 'true', to: 'AND(load > 60, share > AVERAGE(log.share))', tone: 'watch' },
  { is: 'below', to: 'share * 40.005', tone: 'good' },
];

/** Numbers that look unordered and can be made again: a step around a circle of prime length. */
const value = (row: number, step: number): number => ((row * step) % 10_007) / 100;

export function bench(given: number | undefined): Bench {
  const rows = given ?? 100_000;
  const session = Session.create();
  const run = (command: Command): void => {
    const done = session.execute(command);
    if (!done.ok) throw new Error(done.sentence);
  };
  run({
    do: 'add-sheet',
    name: 'log',
    rows,
    columns: [{ name: 'load' }, { name: 'most' }, { name: 'share', formula: 'load / most' }],
  });
  run({
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['load', 'most'],
    texts: Array.from({ length: rows }, (_, row) => [
      String(value(row, 7919)),
      String(value(row, 104_729) + 1),
    ]),
  });
  run({ do: 'add-sheet', name: 'aims', rows: 1, columns: [{ name: 'amount' }] });
  run({ do: 'set-cells', sheet: 'aims', row: 0, columns: ['amount'], texts: [['95']] });
  run({ do: 'name-cell', sheet: 'aims', column: 'amount', row: 0, name: 'limit' });

  let at = 0;
  let tile: Tile | undefined;
  const edit = (): void => {
    at = (at + 7907) % rows;
    run({
      do: 'set-cells',
      sheet: 'log',
      row: at,
      columns: ['load'],
      texts: [[String(value(at + 1, 7919))]],
    });
  };
  const screen = (): void => {
    tile = session.tile('log', Math.min(at, rows - SCREEN), SCREEN, 0, 3);
  };
  const [plain] = timed(TIMES, { fresh: edit, work: screen });
  run({ do: 'set-marks', sheet: 'log', column: 'load', marks: { rules: [...rules] } });
  const loads = (): Float64Array => session.current.sheets[0]!.cells.get('load')!.numbers;
  const mosts = (): Float64Array => session.current.sheets[0]!.cells.get('most')!.numbers;
  /** The rules once more, as a loop over typed arrays. */
  const loop = (): Uint8Array => {
    const [a, b] = [loads(), mosts()];
    const shown = new Uint8Array(rows);
    let sum = 0;
    for (let row = 0; row < rows; row++) sum += a[row]! / b[row]!;
    const mean = sum / rows;
    for (let row = 0; row < rows; row++) {
      const share = a[row]! / b[row]!;
      shown[row] = a[row]! > 95 ? 1 : a[row]! > 60 && share > mean ? 2 : a[row]! < share * 40.005 ? 3 : 0;
    }
    return shown;
  };
  let looped = new Uint8Array(0) as Uint8Array;
  const [marked, bare, again] = timed(
    TIMES,
    { fresh: edit, work: screen },
    {
      work: () => {
        looped = loop();
      },
    },
    { work: screen },
  );
  const shown = session.tile('log', 0, rows, 0, 1).drawings![0]!.rules!;
  let wrong = 0;
  for (let row = 0; row < rows; row++) if (shown[row] !== looped[row]) wrong++;
  const answers = { checked: rows, wrong };
  if (tile?.drawings?.length !== 1) throw new Error('the screen has no marks');
  return {
    name: 'marks',
    rows,
    lines: [
      {
        work: `three rules anew for all rows after an edit, and a screen of ${SCREEN}`,
        ...marked!,
        against: [
          { what: 'the rules as one loop over typed arrays', ...bare! },
          { what: 'the same screen before there were rules', ...plain! },
        ],
        ...answers,
      },
      {
        work: 'a screen when nothing has changed',
        ...again!,
        against: [{ what: 'the same screen before there were rules', ...plain! }],
        ...answers,
      },
    ],
    notes: [],
  };
}
