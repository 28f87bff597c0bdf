/** Where an observed lean comes from: the seven parts of LEAN.EXPLAIN with their errors, for the row of an observed squat or for a lifter who has one in another sheet. */
import { hypot } from '../../../functions/core/elementary/hypot.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { defaultFoot } from '../../../functions/tables/foot.ts';
import type { Sheet } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { dayColumn } from '../../book/roles/day-column.ts';
import { MEASURING_ERROR, PLACING } from '../measuring-error.ts';
import type { ReadContext } from '../open-book.ts';
import { labelOfPart, type PartName, partNames, wordsOfPart } from './explained-words.ts';
import type { ExplainedLean, ExplainedPart } from './figure-answers.ts';
import { ask, dateOf, type Known, settingOf, setup, titleOf } from './figure-lifter.ts';
import { REFERENCE_ANKLE } from './figure-parts.ts';

/** What LEAN.EXPLAIN takes of an observed squat; angles deg, lift cm. */
export interface Seen {
  readonly sheet: Sheet;
  readonly row: number;
  readonly lean: number;
  readonly shin: number;
  readonly depth: number;
  readonly lift: number;
}

/** Step of the differences that carry an error into a part; lengths cm, angles deg. */
const STEP = 0.01;

/** The observed squat of one row; null where it has none. */
function seenIn({ calculation }: ReadContext, sheet: Sheet, row: number): Seen | null {
  const number = (role: string): number | null => {
    const column = columnInRole(sheet, role);
    const value = column?.kind === 'number' ? calculation.value(sheet.id, column.id, row) : null;
    return typeof value === 'number' ? value : null;
  };
  const [lean, shin, depth] = [number('observed_lean'), number('shin'), number('depth')];
  if (lean === null || shin === null || depth === null) return null;
  return { sheet, row, lean, shin, depth, lift: number('lift') ?? 0 };
}

/** Rows of other sheets that are looked through for a lifter's observed squats. */
const MOST = 5000;

/** The observed squat of the lifter's own row, else the deepest frame of the latest day in another sheet. */
function seenOf(context: ReadContext, known: Known): Seen | null {
  const own = seenIn(context, known.sheet, known.row);
  if (own) return own;
  const name = known.title.trim().toLowerCase();
  let latest: { seen: Seen; day: number } | null = null;
  for (const sheet of context.book.sheets) {
    if (sheet.id === known.sheet.id || !columnInRole(sheet, 'observed_lean')) continue;
    const dates = dayColumn(sheet);
    for (let row = 0; row < Math.min(sheet.rows, MOST); row++) {
      const seen = seenIn(context, sheet, row);
      if (!seen || titleOf(context, sheet, row).trim().toLowerCase() !== name) continue;
      const at = dates ? context.calculation.value(sheet.id, dates.id, row) : null;
      const day = typeof at === 'number' ? at : Number.NEGATIVE_INFINITY;
      const later = latest === null || day > latest.day;
      if (later || (day === latest!.day && seen.depth < latest!.seen.depth)) latest = { seen, day };
    }
  }
  return latest?.seen ?? null;
}

/** The observed lean of a lifter taken apart; null without an observed squat or without the lifter's build. */
export function explainedLean(context: ReadContext, known: Known): ExplainedLean | null {
  const seen = known.missing.length > 0 ? null : seenOf(context, known);
  return seen && takenApart(context, known, seen);
}

/** The same for one row only, whatever other sheets have. */
export function explainedRow(context: ReadContext, known: Known): ExplainedLean | null {
  const seen = known.missing.length > 0 ? null : seenIn(context, known.sheet, known.row);
  return seen && takenApart(context, known, seen);
}

/** One observed squat taken apart by a lifter's build. */
function takenApart(context: ReadContext, known: Known, seen: Seen): ExplainedLean {
  const { sheet, row, lean, shin, depth, lift } = seen;
  const ankle = known.number('ankle')!;
  const from = { lean, shin, depth, ...lengthsOf(known), ankle };
  const referenceAnkle = settingOf(context, 'reference_ankle') ?? REFERENCE_ANKLE;
  const errors = errorsOf(context, from);
  const values = partNames.map((part) => partOf(part, from, referenceAnkle, lift, known));
  const refused = values.find(isIssue);
  const foot = known.number('foot') ?? defaultFoot(from.femur, from.tibia, from.trunk);
  const used = ask('ANKLE.USED', [shin, ankle, lift, foot]);
  const share = typeof used === 'number' ? used : null;
  const whole = wholeDegrees(values.map((value) => (typeof value === 'number' ? value : 0)));
  const part = (name: PartName, at: number): ExplainedPart => {
    const value = values[at] as number;
    const moved = (by: number, key: keyof typeof from) =>
      partOf(name, { ...from, [key]: from[key] + by }, referenceAnkle, lift, known);
    const error = hypot(
      ...(Object.keys(from) as (keyof typeof from)[]).map((key) => {
        const [up, down] = [moved(STEP, key), moved(-STEP, key)];
        const slope = typeof up === 'number' && typeof down === 'number' ? (up - down) / (2 * STEP) : 0;
        return slope * errors[key];
      }),
    );
    return {
      part: name,
      label: labelOfPart[name],
      value,
      error,
      whole: whole[at]!,
      within: name !== 'reference' && (whole[at] === 0 || Math.abs(value) <= error),
      words: wordsOfPart(name, value, { ankle, referenceAnkle, share }),
    };
  };
  return {
    sheet: sheet.id,
    row,
    day: dateOf(context, sheet, row) ?? null,
    lean,
    error: errors.lean,
    shin,
    depth,
    lift,
    used: share,
    parts: refused ? [] : partNames.map(part),
    ...(refused ? { sentence: context.calculation.sentence(refused) } : {}),
  };
}

type From = Readonly<Record<'lean' | 'shin' | 'depth' | 'femur' | 'tibia' | 'trunk' | 'ankle', number>>;

const partOf = (
  part: PartName,
  { lean, shin, depth, femur, tibia, trunk, ankle }: From,
  referenceAnkle: number,
  lift: number,
  known: Known,
) =>
  ask('LEAN.EXPLAIN', [
    part,
    lean,
    shin,
    depth,
    femur,
    tibia,
    trunk,
    ankle,
    referenceAnkle,
    lift,
    ...setup(known),
  ]);

const lengthsOf = (known: Known) => ({
  femur: known.number('femur')!,
  tibia: known.number('tibia')!,
  trunk: known.number('trunk')!,
});

/** SD of everything that goes in: the tape and the ankle test as the book sets them, angles by placing their two points. */
function errorsOf(context: ReadContext, { femur, tibia, trunk }: From): From {
  const tape = settingOf(context, 'tape_error') ?? MEASURING_ERROR.length;
  const placed = (length: number): number => {
    const sd = ask('PHOTO.ERROR', [length, PLACING]);
    return typeof sd === 'number' ? sd : 0;
  };
  return {
    lean: placed(trunk),
    shin: placed(tibia),
    depth: placed(femur),
    femur: tape,
    tibia: tape,
    trunk: tape,
    ankle: settingOf(context, 'ankle_error') ?? MEASURING_ERROR.ankle,
  };
}

/** Whole degrees of parts, rounded so that they add up to the rounded sum: the largest remainders go up. */
export function wholeDegrees(values: readonly number[]): readonly number[] {
  const floors = values.map(Math.floor);
  const target = Math.round(values.reduce((sum, value) => sum + value, 0));
  const open = target - floors.reduce((sum, value) => sum + value, 0);
  const up = new Set(
    values
      .map((value, at) => ({ at, rest: value - floors[at]! }))
      .sort((a, b) => b.rest - a.rest || a.at - b.at)
      .slice(0, open)
      .map(({ at }) => at),
  );
  return floors.map((floor, at) => (up.has(at) ? floor + 1 : floor));
}
