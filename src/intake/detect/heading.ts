import type { Per } from '../../units/dimension.ts';
import { splitRate } from '../../units/rate.ts';
import { type DisplayUnit, unitFromWord } from '../../units/unit.ts';
import type { Clock, DateOrder } from '../api.ts';

/** What a heading says besides its name. */
export interface HeadingReading {
  /** Without the unit or the hint. */
  readonly label: string;
  /** The unit's word as it stands; null when there is none. */
  readonly word: string | null;
  readonly unit: DisplayUnit | null;
  /** The numbers are rates: "(kg per week)". */
  readonly per: Per | null;
  readonly dateOrder: DateOrder | null;
  readonly clock: Clock | null;
  /** The unit is glued to the name, which may be chance. */
  readonly glued: boolean;
}

/** Words in brackets that are units of plain numbers: they say that the bracket is no part of the name. */
const plainUnits = new Set([
  '%',
  'per cent',
  'percent',
  'bpm',
  'w',
  'reps',
  'rpe',
  'au',
  'a.u.',
  'count',
  'n',
  '1-10',
  '0-10',
  'years',
  'yrs',
  'y',
  'x bw',
  'kg/m2',
  'kg/m²',
]);

/** Words that are too short to mean a unit unless brackets or a comma set them apart. */
const SHORT = new Set(['m', 'g', 'h', 's', 'n', 'in', 'st', '#', "'", '"', 'ft', 'min', 'rad']);

const BRACKETS = /^(.*?)\s*[([{<]\s*([^()[\]{}<>]+?)\s*[)\]}>]\s*(.*)$/;
const LAST_BRACKETS = /^(.*)[([{<]\s*([^()[\]{}<>]+?)\s*[)\]}>]\s*()$/;
const MARKED = /^(.+?)\s*(?:[,/:]|\s[-–]\s|\s(?:in|as)\s)\s*([^,/:]{1,16})$/i;
const LAST_WORD = /^(.+?)[\s_.-]+([\p{L}°"'″′/·*]{1,12})$/u;
/** Measures whose name often has a unit glued to it: weightkg, heightcm. */
const GLUED =
  /^(.*(?:weight|height|mass|stature|length|femur|tibia|trunk|foot|load|span|width|depth))(kg|lbs|lb|cm|mm|in)$/i;

const orders: readonly (readonly [RegExp, DateOrder])[] = [
  [/^(y{2,4})[-/. ]?m{1,3}[-/. ]?d{1,2}$/i, 'ymd'],
  [/^d{1,2}[-/. ]?m{1,3}[-/. ]?(y{2,4})$/i, 'dmy'],
  [/^t{1,2}[-/. ]?m{1,3}[-/. ]?j{2,4}$/i, 'dmy'],
  [/^j{1,2}[-/. ]?m{1,3}[-/. ]?a{2,4}$/i, 'dmy'],
  [/^m{1,3}[-/. ]?d{1,2}[-/. ]?(y{2,4})$/i, 'mdy'],
];
const clocks: readonly (readonly [RegExp, Clock])[] = [
  [/^h{1,2}:m{1,2}(:s{1,2})?$|^hours?:min(utes)?$|^hr:min$/i, 'h:mm'],
  [/^m{1,2}:s{1,2}$|^min(utes)?:s(ec(onds?)?)?$/i, 'm:ss'],
];

/** Longer headings are sentences; no unit is looked for in them. */
export const LONGEST_HEADING = 200;

const nothing = { word: null, unit: null, per: null, dateOrder: null, clock: null, glued: false } as const;

/** Takes a heading apart: "Femur (cm)", "Load, kg", "tibia_mm", "Date [dd.mm.yyyy]", "Duration (min:sec)". */
export function readHeading(heading: string): HeadingReading {
  const whole = heading.replace(/\s+/g, ' ').trim();
  if (whole.length > LONGEST_HEADING) return { ...nothing, label: whole };
  for (const pattern of [LAST_BRACKETS, BRACKETS]) {
    const bracket = pattern.exec(whole);
    if (!bracket) continue;
    const label = `${bracket[1]} ${bracket[3]}`.trim();
    const said = isAxis(label, bracket[2]!) ? null : hintOf(bracket[2]!);
    if (said && label !== '') return { ...nothing, ...said, label };
  }
  const last = LAST_WORD.exec(whole);
  const lastUnit = last && !SHORT.has(last[2]!.toLowerCase()) ? unitFromWord(last[2]!) : undefined;
  const whatLastSays =
    last && lastUnit ? { ...nothing, label: last[1]!.trim(), word: last[2]!, unit: lastUnit } : null;
  // A unit with a stroke inside is no name and unit.
  if (whatLastSays && /[/·]/.test(whatLastSays.word)) return whatLastSays;
  const marked = MARKED.exec(whole);
  const after = marked && !isAxis(marked[1]!, marked[2]!) ? hintOf(marked[2]!) : null;
  if (marked && after) return { ...nothing, ...after, label: marked[1]!.trim() };
  if (whatLastSays) return whatLastSays;
  const glued = GLUED.exec(whole);
  const unit = glued ? unitFromWord(glued[2]!) : undefined;
  if (glued && unit) return { ...nothing, label: glued[1]!, word: glued[2]!, unit, glued: true };
  return { ...nothing, label: whole };
}

/** What is counted in years; of anything else "y" is the axis beside "x", and part of the name. */
const IN_YEARS = /age|years?|experience|training|since|history|career/i;
const isAxis = (label: string, word: string): boolean => /^y$/i.test(word.trim()) && !IN_YEARS.test(label);

function hintOf(word: string): Partial<HeadingReading> | null {
  const text = word.trim();
  if (text.length > 20) return null;
  const unit = unitFromWord(text);
  if (unit) return { word: text, unit };
  const rate = splitRate(text);
  const of = unitFromWord(rate.text);
  if (rate.per && (of || rate.text === '')) return { word: text, unit: of ?? null, per: rate.per };
  for (const [pattern, dateOrder] of orders) if (pattern.test(text)) return { dateOrder, word: text };
  for (const [pattern, clock] of clocks) if (pattern.test(text)) return { clock, word: text };
  return plainUnits.has(text.toLowerCase()) ? { word: text } : null;
}

/** Longer cells are no units. */
const LONGEST_UNIT = 24;

const withoutBrackets = (cell: string): string =>
  cell.length > LONGEST_UNIT ? cell : cell.trim().replace(/^[([{]\s*|\s*[)\]}]$/g, '');

/** Words that say what a column holds, among units: they are no unit, and no value either. */
const kindWords = new Set(['m/f', 'f/m', 'y/n', 'yes/no', 'date', 'time', 'text', 'number', 'name', 'id']);

/** True for a cell that could be in a line of units: "cm", "[kg]", "(°)", "-", "%", "date". */
export function isUnitCell(cell: string): boolean {
  const text = withoutBrackets(cell);
  return text === '' || text === '-' || kindWords.has(text.toLowerCase()) || unitCellWord(cell) !== null;
}

/** The unit's word of a cell in a line of units, or null. */
export function unitCellWord(cell: string): string | null {
  const text = withoutBrackets(cell);
  return text !== '' && hintOf(text) ? text : null;
}
