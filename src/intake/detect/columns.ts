import { type DisplayUnit, unitFromWord } from '../../units/unit.ts';
import type { Choices, ColumnChoice, ColumnFinding, Finding } from '../api.ts';
import { note } from '../sentences/index.ts';
import { durationWords } from '../words.ts';
import { findKind, fitOf, wordsOfYesNo } from './find-kind.ts';
import { type FileHabits, findDecimal, findThousands } from './find-marks.ts';
import { findClock, findDateOrder } from './find-order.ts';
import { type HeadingReading, readHeading } from './heading.ts';
import type { ColumnLook } from './look.ts';

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
  const times = look.durations.of('three parts', 'open', 'h:mm', 'm:ss');
  const plain = look.numbers.of(...look.numbers.counts.keys());
  // A few times among numbers are exceptions: they never make the others minutes.
  const readsTime =
    numeric &&
    times > 0 &&
    (display?.dimension === 'duration' || said.clock !== null || saysDuration(said.label) || times > plain);
  const dimension = display?.dimension ?? (readsTime ? 'duration' : null);
  const missing =
    chosen.missing ?? fileChoices.missing ?? (kind.value === 'text' ? [] : [...look.missing.counts.keys()]);
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
    clock: !numeric || times === 0 ? null : chosen.clock ? choice(chosen.clock) : findClock(look, said),
    ownUnits: isHabit(look.units.of(...look.units.counts.keys()), look),
    perCent: isHabit(look.perCent.of('%'), look),
    yesNo: kind.value === 'yes-no' ? wordsOfYesNo(look) : null,
    missing,
    filled,
    blank: look.blank + look.missing.of(...missing),
    unfit: filled - fitOf(look, kind.value, said) + (numeric && !readsTime ? times : 0),
    unitsAt: null,
    unitsOf: null,
    timesOnly: readsTime && times === look.filled,
    examples: look.examples,
  };
}

const saysDuration = (label: string): boolean =>
  durationWords.test(label.toLowerCase().replace(/[_-]+/g, ' '));

/** More than an exception: one in five of the filled cells. */
const isHabit = (count: number, look: ColumnLook): boolean => count > 0 && count >= 0.2 * look.filled;

const choice = <T>(value: T): Finding<T> => ({ value, certainty: 'sure', because: note('chosen') });

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
