import type { ColumnKind } from '../../book/model.ts';
import type { Certainty, Finding } from '../api.ts';
import { note } from '../sentences/index.ts';
import { dateWords, durationWords, labelWords, timeOfDayWords, yesNoPairs } from '../words.ts';
import type { HeadingReading } from './heading.ts';
import type { ColumnLook } from './look.ts';

/** Share of a column's filled cells that must read as a kind; the rest is held. */
const MOST = 0.75;

/** Cells that read as a kind. */
export function fitOf(look: ColumnLook, kind: ColumnKind, said: HeadingReading): number {
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

/** What the cells of a column are, by most of them and by what the heading says. */
export function findKind(look: ColumnLook, said: HeadingReading): Finding<ColumnKind> {
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

/** The words of a column that mean yes and no. */
export function wordsOfYesNo(look: ColumnLook): readonly [readonly string[], readonly string[]] {
  const [yes, no] = yesNoPairs[0]!;
  return [yes.filter((w) => look.yesNoSeen.has(w)), no.filter((w) => look.yesNoSeen.has(w))];
}
