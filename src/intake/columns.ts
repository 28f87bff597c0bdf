import type { ColumnKind } from '../book/model.ts';
import { type DisplayUnit, unitFromWord } from '../units/unit.ts';
import type {
  Certainty,
  Choices,
  Clock,
  ColumnChoice,
  ColumnFinding,
  DateOrder,
  DecimalMark,
  Finding,
  ThousandsMark,
} from './api.ts';
import { type HeadingReading, readHeading } from './heading.ts';
import type { ColumnLook } from './look.ts';
import type { MarkUse } from './read-number.ts';
import { note } from './sentences.ts';
import { dateWords, durationWords, labelWords, timeOfDayWords, yesNoPairs } from './words.ts';

/** What the file as a whole tells about its columns. */
export interface FileHabits {
  readonly decimal: DecimalMark | null;
  readonly dateOrder: DateOrder | null;
}

/** Share of a column's filled cells that must read as a kind; the rest is held. */
const MOST = 0.75;

/** Decimal mark and date order that columns prove, for those that cannot tell. */
export function habitsOf(looks: readonly ColumnLook[], choices: Choices, delimiter: string): FileHabits {
  let point = 0;
  let comma = 0;
  let dmy = 0;
  let mdy = 0;
  for (const look of looks) {
    const marks = decimalEvidence(look);
    if (marks.point > marks.comma) point++;
    if (marks.comma > marks.point) comma++;
    if (look.dates.of('dmy', 'dotted') > look.dates.of('mdy')) dmy++;
    else if (look.dates.of('mdy') > 0) mdy++;
  }
  const decimal =
    choices.decimal ?? (comma > point ? ',' : point > comma ? '.' : delimiter === ',' ? '.' : null);
  return { decimal, dateOrder: choices.dateOrder ?? (dmy > mdy ? 'dmy' : mdy > dmy ? 'mdy' : null) };
}

function decimalEvidence(look: ColumnLook): { point: number; comma: number } {
  const all = [look.numbers, look.numberInside];
  const sum = (...keys: Exclude<MarkUse, 'none'>[]): number => all.reduce((n, t) => n + t.of(...keys), 0);
  return {
    point: sum('point', 'comma-thousands'),
    comma: sum('comma', 'point-thousands', 'space-thousands-comma'),
  };
}

/** Everything about one column of the file. */
export function findColumn(
  index: number,
  heading: string,
  unitWord: string | null,
  look: ColumnLook,
  habits: FileHabits,
  fileChoices: Choices,
): ColumnFinding {
  const chosen: ColumnChoice = fileChoices.columns?.[index] ?? {};
  const choices: Choices = {
    ...fileChoices,
    ...(chosen.decimal ? { decimal: chosen.decimal } : {}),
    ...(chosen.dateOrder ? { dateOrder: chosen.dateOrder } : {}),
  };
  const said = readHeading(heading);
  const decimal = findDecimal(look, habits, choices);
  const kind = chosen.kind ? choice(chosen.kind) : findKind(look, said);
  const numeric = kind.value === 'number';
  const unit = !numeric
    ? noUnit()
    : chosen.unit !== undefined
      ? choice(chosen.unit === null ? null : (unitFromWord(chosen.unit)?.unit ?? null))
      : findUnit(look, said, unitWord);
  const display = unit.value === null ? undefined : unitFromWord(unit.value);
  const readsTime = numeric && look.durations.of('three parts', 'open', 'h:mm', 'm:ss') > 0;
  const dimension = display?.dimension ?? (readsTime ? 'duration' : null);
  const missing = chosen.missing ?? (kind.value === 'text' ? [] : [...look.missing.counts.keys()]);
  const lost = kind.value === 'text' ? look.missing.of(...look.missing.counts.keys()) : 0;
  const filled = look.filled + lost + look.failed;
  return {
    index,
    heading,
    label: chosen.label ?? said.label,
    kind,
    unit: readsTime && unit.value === null ? { ...unit, value: 'min' } : unit,
    dimension,
    decimal,
    thousands: findThousands(look, decimal.value),
    dateOrder: kind.value === 'date' ? findDateOrder(look, said, habits, choices) : null,
    clock: !readsTime ? null : chosen.clock ? choice(chosen.clock) : findClock(look, said),
    ownUnits: isHabit(look.units.of(...look.units.counts.keys()), look),
    perCent: isHabit(look.perCent.of('%'), look),
    yesNo: kind.value === 'yes-no' ? wordsOfYesNo(look) : null,
    missing,
    filled,
    blank: look.blank + look.missing.of(...missing),
    unfit: filled - fitOf(look, kind.value, said),
    examples: look.examples,
  };
}

/** More than an exception: one in five of the filled cells. */
const isHabit = (count: number, look: ColumnLook): boolean => count > 0 && count >= 0.2 * look.filled;

const choice = <T>(value: T): Finding<T> => ({ value, certainty: 'sure', because: note('chosen') });

/** Cells that read as a kind. */
function fitOf(look: ColumnLook, kind: ColumnKind, said: HeadingReading): number {
  const numbers = look.numbers.of(...look.numbers.counts.keys());
  if (kind === 'number') {
    const times = look.durations.of('three parts', 'open', 'h:mm', 'm:ss', 'words');
    const units = Math.max(look.units.of(...look.units.counts.keys()), times);
    return Math.min(numbers + units + look.perCent.of('%'), look.filled);
  }
  if (kind === 'date')
    return look.dates.of('self', 'dotted', 'dmy', 'mdy', 'open') + (isDated(said) ? look.compactDates : 0);
  if (kind === 'yes-no') return look.yes + look.no;
  return look.filled + look.failed + look.missing.of(...look.missing.counts.keys());
}

const wordsIn = (said: HeadingReading): string => said.label.toLowerCase().replace(/[_-]+/g, ' ');
const isDated = (said: HeadingReading): boolean => said.dateOrder !== null || dateWords.test(wordsIn(said));

function findKind(look: ColumnLook, said: HeadingReading): Finding<ColumnKind> {
  const { filled } = look;
  const finding = (value: ColumnKind, certainty: Certainty, fit = filled): Finding<ColumnKind> => ({
    value,
    certainty,
    because: note('cells-fit', { fit, filled, kind: kindWords[value] }),
    others: (['number', 'text', 'date', 'yes-no', 'choice'] as const).filter((k) => k !== value),
  });
  if (filled === 0)
    return {
      value: said.unit ? 'number' : isDated(said) ? 'date' : 'text',
      certainty: 'doubtful',
      because: note('no-cells'),
      others: ['number', 'text', 'date', 'yes-no'],
    };
  const heading = wordsIn(said);
  const numbers = look.numbers.of(...look.numbers.counts.keys());
  const isLabel = labelWords.test(heading) && look.leadingZeros > 0;
  if (
    numbers === filled &&
    (isLabel ||
      look.leadingZeros >= filled / 2 ||
      (look.leadingZeros > 0 && sameLength(look)) ||
      look.longest > 15)
  )
    return {
      ...finding('text', 'likely'),
      because: note('leading-zeros', { example: look.leadingZeroExample || look.examples[0]! }),
    };
  const compact = isDated(said) && look.compactDates >= MOST * filled;
  const dates = compact ? look.compactDates : fitOf(look, 'date', said);
  if (dates >= MOST * filled || (dates >= 0.5 * filled && isDated(said)))
    return finding('date', dates === filled ? 'sure' : 'likely', dates);
  const clocks = look.durations.of('three parts', 'open', 'h:mm', 'm:ss');
  if (clocks >= 0.5 * filled && timeOfDayWords.test(heading) && !durationWords.test(heading))
    return finding('text', 'likely');
  const fit = fitOf(look, 'number', said);
  if (fit >= MOST * filled || (fit >= 0.5 * filled && (said.unit !== null || numbers >= 2)))
    return finding('number', fit === filled ? 'sure' : 'likely', fit);
  if (look.yes + look.no === filled && isYesNo(look))
    return finding('yes-no', look.no > 0 ? 'sure' : 'likely');
  return finding('text', 'sure');
}

const kindWords: Readonly<Record<ColumnKind, string>> = {
  number: 'numbers',
  text: 'text',
  date: 'dates',
  'yes-no': 'yes or no',
  choice: 'one of a few words',
};

const sameLength = (look: ColumnLook): boolean =>
  new Set([...look.distinct].map((text) => text.length)).size === 1;

/** Words of one language for both, or a lone cross for yes; "f" and "s" alone are more likely something else. */
function isYesNo(look: ColumnLook): boolean {
  const seen = look.yesNoSeen;
  if (look.yes > 0 && look.no > 0)
    return !(seen.size === 2 && seen.has('f') && !seen.has('t') && !seen.has('true'));
  return [...seen].every((word) => word.length > 2 || ['x', '✓', '✔', 'ja', 'no'].includes(word));
}

function wordsOfYesNo(look: ColumnLook): readonly [readonly string[], readonly string[]] {
  const [yes, no] = yesNoPairs[0]!;
  return [yes.filter((w) => look.yesNoSeen.has(w)), no.filter((w) => look.yesNoSeen.has(w))];
}

function findDecimal(look: ColumnLook, habits: FileHabits, choices: Choices): Finding<DecimalMark> {
  if (choices.decimal) return { value: choices.decimal, certainty: 'sure', because: note('chosen') };
  const { point, comma } = decimalEvidence(look);
  const other = (mark: DecimalMark): DecimalMark[] => [mark === '.' ? ',' : '.'];
  if (point !== comma) {
    const value = point > comma ? '.' : ',';
    const example =
      value === '.'
        ? (look.numbers.example('point', 'comma-thousands') ??
          look.numberInside.example('point', 'comma-thousands'))
        : (look.numbers.example('comma', 'point-thousands', 'space-thousands-comma') ??
          look.numberInside.example('comma', 'point-thousands'));
    return {
      value,
      certainty: point > 0 && comma > 0 ? 'likely' : 'sure',
      because: note('decimal-seen', { count: Math.max(point, comma), example: example ?? '' }),
      others: other(value),
    };
  }
  const open = look.numbers.of('point-or-thousands', 'comma-or-thousands');
  if (open > 0) {
    // One group of three after a mark: the habit of the file decides, else the mark is taken as decimal, and asked about.
    const points = look.numbers.of('point-or-thousands') >= look.numbers.of('comma-or-thousands');
    const value = habits.decimal ?? (points ? '.' : ',');
    return {
      value,
      certainty: habits.decimal ? 'likely' : 'doubtful',
      because: note('decimal-ambiguous', {
        example: look.numbers.example(points ? 'point-or-thousands' : 'comma-or-thousands')!,
        mark: value,
      }),
      others: other(value),
    };
  }
  const value = habits.decimal ?? '.';
  return {
    value,
    certainty: 'likely',
    because: habits.decimal ? note('decimal-elsewhere', { mark: value }) : note('decimal-none'),
    others: other(value),
  };
}

function findThousands(look: ColumnLook, decimal: DecimalMark): ThousandsMark {
  const { numbers } = look;
  if (numbers.of('space-thousands', 'space-thousands-comma') > 0) return ' ';
  if (numbers.of('quote-thousands') > 0) return "'";
  if (decimal === '.' && numbers.of('comma-thousands', 'comma-or-thousands') > 0) return ',';
  if (decimal === ',' && numbers.of('point-thousands', 'point-or-thousands') > 0) return '.';
  return '';
}

const noUnit = (): Finding<string | null> => ({ value: null, certainty: 'likely', because: note('no-unit') });

function findUnit(look: ColumnLook, said: HeadingReading, below: string | null): Finding<string | null> {
  const belowUnit: DisplayUnit | undefined = below === null ? undefined : unitFromWord(below);
  if (belowUnit)
    return {
      value: belowUnit.unit,
      certainty: 'sure',
      because: note('unit-below-heading', { word: below! }),
    };
  if (said.unit)
    return {
      value: said.unit.unit,
      certainty: said.glued ? 'likely' : 'sure',
      because: note('unit-in-heading', { word: said.word! }),
      others: [null],
    };
  // The unit that most cells carry, if carrying one is a habit here and no exception.
  let best: string | null = null;
  for (const [unit, count] of look.units.counts)
    if (best === null || count > look.units.of(best)) best = unit;
  if (best !== null && isHabit(look.units.of(best), look))
    return {
      value: best,
      certainty: look.units.of(best) === look.filled ? 'sure' : 'likely',
      because: note('unit-in-cells', { count: look.units.of(best), word: best }),
      others: [null],
    };
  return noUnit();
}

function findDateOrder(
  look: ColumnLook,
  said: HeadingReading,
  habits: FileHabits,
  choices: Choices,
): Finding<DateOrder> {
  if (choices.dateOrder) return { value: choices.dateOrder, certainty: 'sure', because: note('chosen') };
  const dmy = look.dates.of('dmy');
  const mdy = look.dates.of('mdy');
  const open = look.dates.of('open');
  const dotted = look.dates.of('dotted');
  const others: readonly DateOrder[] = ['dmy', 'mdy'];
  if (dmy > 0 && mdy > 0) {
    const value = dmy >= mdy ? 'dmy' : 'mdy';
    return {
      value,
      certainty: 'doubtful',
      because: note('date-order-mixed', {
        dmy: look.dates.example('dmy')!,
        mdy: look.dates.example('mdy')!,
        order: value,
      }),
      others,
    };
  }
  if (dmy > 0 || mdy > 0) {
    const value = dmy > 0 ? 'dmy' : 'mdy';
    return {
      value,
      certainty: 'sure',
      because: note('date-order-proven', { example: look.dates.example(value)!, order: value }),
      others,
    };
  }
  if (said.dateOrder)
    return { value: said.dateOrder, certainty: 'sure', because: note('clock-said', { word: said.word! }) };
  if (open > 0) {
    const value = habits.dateOrder ?? 'dmy';
    return {
      value,
      certainty: habits.dateOrder ? 'likely' : 'doubtful',
      because: note('date-order-open', { example: look.dates.example('open')!, order: value }),
      others,
    };
  }
  const example = look.dates.example('self', 'dotted') ?? look.examples[0] ?? '';
  return {
    value: dotted > 0 ? 'dmy' : 'ymd',
    certainty: 'sure',
    because: note('date-order-written', { example }),
  };
}

function findClock(look: ColumnLook, said: HeadingReading): Finding<Clock> {
  const others: readonly Clock[] = ['h:mm', 'm:ss'];
  if (said.clock)
    return {
      value: said.clock,
      certainty: 'sure',
      because: note('clock-said', { word: said.word! }),
      others,
    };
  const proven = (value: Clock, way: 'm:ss' | 'h:mm' | 'three parts'): Finding<Clock> => ({
    value,
    certainty: 'likely',
    because: note('clock-proven', { example: look.durations.example(way)!, clock: value }),
    others,
  });
  if (look.durations.of('m:ss') > 0) return proven('m:ss', 'm:ss');
  const open = look.durations.of('open');
  if (open > 0)
    return {
      value: 'h:mm',
      certainty: 'doubtful',
      because: note('clock-open', { example: look.durations.example('open')!, clock: 'h:mm' }),
      others,
    };
  return proven('h:mm', 'three parts');
}
