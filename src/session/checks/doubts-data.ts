import type { AnyDefinition } from '../../../functions/core/define.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import type { Book, Column, Sheet } from '../../book/model.ts';
import { definePart, pointsAtNothing } from '../../book/references/part.ts';
import { roleOf } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { today, writeDate } from '../../units/date.ts';
import { chosenColumns, columnFor, titleOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import type { Doubt } from './doubt.ts';
import { keyOf } from './doubt-key.ts';
import { settingDoubts } from './setting-doubts.ts';

/** What looks wrong in the measures themselves, sheet by sheet. */
export function dataDoubts(context: ReadContext): readonly Doubt[] {
  return [
    ...settingDoubts(context),
    ...context.book.sheets.flatMap((sheet) => [
      ...lengthDoubts(context, sheet),
      ...ankleDoubts(context, sheet),
      ...oldTests(context, sheet),
    ]),
  ];
}

/** A sheet lists so many implausible builds one by one; where there are more, a column is wrong, not a lifter. */
const LENGTHS_LISTED = 200;

/** Rows whose lengths do not fit together, with the words of SEG.CHECK. Remembered until one of the columns changes. */
function lengthDoubts(context: ReadContext, sheet: Sheet): readonly Doubt[] {
  const chosen = chosenColumns(context.book);
  const columns = ['femur', 'tibia', 'trunk'].map((measure) => columnFor(sheet, measure, chosen));
  if (!columns.every((column) => column !== undefined)) return [];
  const stature = columnFor(sheet, 'stature', chosen);
  const ranges = [...columns, ...(stature ? [stature] : [])].map(({ id }) =>
    context.calculation.column(sheet.id, id),
  );
  return implausible(ranges)
    .slice(0, LENGTHS_LISTED)
    .map(({ row, words }) => {
      const title = titleOf(context, sheet, row);
      const lengths = ranges.map((range) => range.numbers[row]!).join(' ');
      return {
        place: { sheet: sheet.id, column: columns[0]!.id, row },
        about: 'length',
        sentence: `${title}: ${words}.`,
        remedy:
          'Measure again, both sides, to the same landmarks. If the build really is unusual, accept the check.',
        key: keyOf('length', sheet.id, title, words, lengths),
      };
    });
}

interface Found {
  readonly row: number;
  readonly words: string;
}
const remembered = new WeakMap<
  Range,
  { readonly ranges: readonly Range[]; readonly found: readonly Found[] }
>();

function implausible(ranges: readonly Range[]): readonly Found[] {
  const known = remembered.get(ranges[0]!);
  if (known?.ranges.length === ranges.length && known.ranges.every((range, i) => range === ranges[i]))
    return known.found;
  const check = registry.get('SEG.CHECK') as AnyDefinition;
  const compute = check.compute as (...lengths: (number | undefined)[]) => unknown;
  const found: Found[] = [];
  const rows = ranges[0]?.rows ?? 0;
  for (let row = 0; row < rows; row++) {
    const [femur, tibia, trunk, stature] = ranges.map(({ kinds, numbers }) =>
      kinds[row] === Kind.number && numbers[row]! > 0 ? numbers[row] : undefined,
    );
    if (femur === undefined || tibia === undefined || trunk === undefined) continue;
    const words = compute(femur, tibia, trunk, stature);
    if (typeof words === 'string' && words !== 'ok') found.push({ row, words });
  }
  remembered.set(ranges[0]!, { ranges, found });
  return found;
}

/** Words of a label that say that the ankle was measured without weight on it. */
const WITHOUT_WEIGHT =
  /non.?weight|without weight|un(loaded|weighted)|passive|prone|supine|seated|sitting|lying|\bnwb\b/i;
/** Below this for everyone an ankle range was hardly measured with weight on it, deg: working assumption. */
const LEAST_OF_MOST = 25;
const ENOUGH = 3;

/** An ankle range that was not measured with weight on the foot is 15–20° lower, and the lean far too large. */
function ankleDoubts({ book, calculation }: ReadContext, sheet: Sheet): readonly Doubt[] {
  const column = columnFor(sheet, 'ankle', chosenColumns(book));
  if (!column || (column.dimension !== undefined && column.dimension !== 'angle')) return [];
  const doubt = (why: string): Doubt => ({
    place: { sheet: sheet.id, column: column.id },
    about: 'ankle',
    sentence: `${column.label} looks measured without weight on the foot: ${why}.`,
    remedy:
      'Measure with weight on the foot, knee bent (knee to wall: ANKLE.FROM.WALL). A range without weight is 15–20° lower, and gives far too much lean.',
    key: keyOf('ankle', sheet.id, column.id, why.replace(/\d+/g, '')),
  });
  if (WITHOUT_WEIGHT.test(`${column.label} ${column.note ?? ''}`))
    return [doubt('its label or note says so')];
  // From knee to wall it was measured with weight on it.
  if (column.formula !== undefined && /ANKLE\.FROM\.WALL/i.test(column.formula)) return [];
  const { kinds, numbers } = calculation.column(sheet.id, column.id);
  let count = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < kinds.length; row++) {
    if (kinds[row] !== Kind.number) continue;
    count++;
    most = Math.max(most, numbers[row]!);
  }
  return count >= ENOUGH && most < LEAST_OF_MOST
    ? [
        doubt(
          `all ${count} are below ${LEAST_OF_MOST}° (a working assumption: with weight most people have 30–45°)`,
        ),
      ]
    : [];
}

const setting = z.object({ testsOlderThan: z.number().int().positive().optional() });

export const doubtsPart = definePart({
  word: 'setting',
  part: 'settings',
  key: 'doubts',
  schema: setting,
  references: pointsAtNothing,
});

/** After how many days a test counts as old; undefined where nobody has chosen. */
export function oldAfter(book: Book): number | undefined {
  const read = setting.safeParse(book.parts.settings.get('doubts'));
  return read.success ? read.data.testsOlderThan : undefined;
}

/** A sheet may have several test dates; only one can be the test date of its rows. */
const isTestDate = (column: Column): boolean => column.kind === 'date' && roleOf(column) === 'tested';

/** Lifters whose latest test is older than the chosen time. */
function oldTests(context: ReadContext, sheet: Sheet): readonly Doubt[] {
  const days = oldAfter(context.book);
  if (days === undefined) return [];
  const now = Math.floor(today());
  return sheet.columns.filter(isTestDate).flatMap((column) => {
    const { kinds, numbers } = context.calculation.column(sheet.id, column.id);
    const latest = new Map<string, { row: number; date: number }>();
    for (let row = 0; row < kinds.length; row++) {
      if (kinds[row] !== Kind.date && kinds[row] !== Kind.number) continue;
      const title = titleOf(context, sheet, row);
      const date = numbers[row]!;
      const before = latest.get(title);
      if (!before || before.date < date) latest.set(title, { row, date });
    }
    const old = [...latest].filter(([, { date }]) => now - date > days);
    const [first] = old.sort((a, b) => a[1].date - b[1].date);
    if (!first) return [];
    const [title, { row, date }] = first;
    return [
      {
        place: { sheet: sheet.id, column: column.id, row },
        about: 'old test' as const,
        sentence: `${old.length} of ${latest.size} have a latest test older than ${days} days; the oldest is ${title}, ${writeDate(date)}.`,
        remedy: 'Test again before relying on these figures: ankle range and strength change within weeks.',
        key: keyOf('old test', sheet.id, column.id, days, ...old.map(([name]) => name)),
      },
    ];
  });
}
