import { hypot } from '../../../functions/core/elementary/hypot.ts';
import { dayColumn } from '../../book/roles/day-column.ts';
import { degrees } from '../figure/drawing/drawing-words.ts';
import { signedWhole } from '../figure/drawing/explained-drawing.ts';
import { explainedRow } from '../figure/explained.ts';
import type { ExplainedLean, ExplainedPart } from '../figure/figure-answers.ts';
import { dateOf, knownOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import type { ChartRecord } from './chart-record.ts';
import type { ChartPanel, ChartPoint, Content } from './data.ts';
import type { Read } from './read.ts';

/** More bars than this below each other show nothing. */
const mostBars = 60;

interface Observed {
  readonly row: number;
  readonly group: number;
  readonly name: string;
  readonly date: number;
  readonly explained: ExplainedLean;
}

/**
 * Observed leans as bars of their seven parts. Over a team one bar each, the deepest frame of the latest day, high to low; in
 * panels one for each lifter, day by day, so that before and after are below each other.
 */
export function leanParts(read: Read, record: ChartRecord, context: ReadContext): Content {
  const all = observedIn(read, context);
  const notes: string[] = [];
  const left = read.rows.length - all.length;
  if (left > 0)
    notes.push(
      `${left} of ${read.rows.length} rows are left out: observed lean, shin angle, depth, femur, tibia, trunk or ankle is missing, or no posture is balanced.`,
    );
  const panels: ChartPanel[] = [];
  if (record.panels && read.groups.length > 0) {
    read.groups.forEach((title, group) => {
      const mine = deepestOfDays(all.filter((one) => one.group === group));
      if (mine.length === 0) return;
      panels.push(
        barsOf(mine.slice(-mostBars), title, ({ explained, row }) => explained.day ?? `row ${row + 1}`),
      );
      if (mine.length > 1) notes.push(`${title}: ${changeInWords(mine[0]!, mine.at(-1)!)}`);
    });
  } else {
    const latest = read.groups.length === 0 ? all : latestOfEach(all);
    const sorted = latest.toSorted((a, b) => b.explained.lean - a.explained.lean || a.row - b.row);
    if (sorted.length > mostBars)
      notes.push(`${sorted.length - mostBars} further bars are not drawn: filter the sheet.`);
    panels.push(barsOf(sorted.slice(0, mostBars), '', ({ name }) => name));
    if (read.groups.length > 0 && latest.length < all.length)
      notes.push('Each lifter’s deepest frame of the latest day. Draw panels to see earlier days beside it.');
  }
  notes.push(
    'Parts left of 0 make the lean smaller. Pale parts are within error. The marks above and below a bar are the observed lean.',
  );
  return { x: { label: read.measures[0]!.label, is: 'number' }, y: { label: '' }, panels, notes };
}

function observedIn(read: Read, context: ReadContext): readonly Observed[] {
  const { sheet } = read;
  const dates = dayColumn(sheet);
  return [...read.rows].flatMap((row): Observed[] => {
    const group = read.groupOf[row]!;
    if (group < 0 || Number.isNaN(read.measures[0]!.values[row]!)) return [];
    const explained = explainedRow(context, knownOf(context, sheet, row, {}));
    if (!explained || explained.parts.length === 0) return [];
    const date = dates ? context.calculation.value(sheet.id, dates.id, row) : null;
    const day = dateOf(context, sheet, row);
    return [
      {
        row,
        group,
        name: `${read.nameOf(row)}${read.groups.length === 0 && day ? `, ${day}` : ''}`,
        date: typeof date === 'number' ? date : Number.NEGATIVE_INFINITY,
        explained,
      },
    ];
  });
}

function latestOfEach(all: readonly Observed[]): readonly Observed[] {
  const latest = new Map<number, Observed>();
  for (const one of all) {
    const before = latest.get(one.group);
    if (!before || one.date > before.date || (one.date === before.date && isDeeper(one, before)))
      latest.set(one.group, one);
  }
  return [...latest.values()];
}

function barsOf(all: readonly Observed[], title: string, called: (one: Observed) => string): ChartPanel {
  const points = all.map(
    (one, at): ChartPoint => ({
      x: one.explained.lean,
      y: at,
      group: Math.max(0, one.group),
      name: called(one),
      row: one.row,
      note: one.explained.parts.map(partInWords).join(', '),
    }),
  );
  return {
    title,
    points,
    lines: [],
    bands: [],
    levels: [],
    bars: all.map((one) => ({
      name: called(one),
      lean: one.explained.lean,
      parts: one.explained.parts.map(({ part, label, value, within }) => ({ part, label, value, within })),
    })),
  };
}

const partInWords = ({ part, label, whole, within }: ExplainedPart): string =>
  `${label.toLowerCase()} ${part === 'reference' ? degrees(whole) : within ? 'within error' : signedWhole(whole)}`;

/** Of frames of one day the deepest, by day; rows without a day stay apart. */
function deepestOfDays(all: readonly Observed[]): readonly Observed[] {
  const days = new Map<string, Observed>();
  for (const one of all) {
    const day = one.date === Number.NEGATIVE_INFINITY ? `row ${one.row}` : `${one.date}`;
    const before = days.get(day);
    if (!before || isDeeper(one, before)) days.set(day, one);
  }
  return [...days.values()].sort((a, b) => a.date - b.date || a.row - b.row);
}

const isDeeper = (one: Observed, other: Observed): boolean => one.explained.depth < other.explained.depth;

/** First and last squat of a lifter: what changed by more than the errors of both. It never says why. */
function changeInWords(first: Observed, last: Observed): string {
  const [from, to] = [first.explained, last.explained];
  const real = to.parts.flatMap((part, at) => {
    const before = from.parts[at]!;
    const change = part.value - before.value;
    return Math.round(change) !== 0 && Math.abs(change) > hypot(part.error, before.error)
      ? [`${part.label.toLowerCase()} ${signedWhole(Math.round(change))}`]
      : [];
  });
  const whole = Math.round(to.lean) - Math.round(from.lean);
  const lean =
    Math.abs(to.lean - from.lean) > hypot(from.error, to.error)
      ? `${degrees(from.lean)} to ${degrees(to.lean)} (${signedWhole(whole)})`
      : `${degrees(from.lean)} and ${degrees(to.lean)}, within error`;
  return `${lean}${real.length > 0 ? `; changed by more than error: ${real.join(', ')}` : '; no part changed by more than its error'}.`;
}
