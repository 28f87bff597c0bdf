import type { Column } from '../../book/model.ts';
import { displayUnitOf } from '../../units/unit.ts';
import type { ColumnFinding, PlausibleColumn } from '../api.ts';
import { DateLane } from '../cells/date.ts';
import { NumberLane } from '../cells/number.ts';
import { TextLane } from '../cells/text.ts';
import { type Note, note, sentence } from '../sentences.ts';
import type { Placed } from './placed.ts';

/** What to know about a column of the file after its cells were read. */
export function columnNotes({ match, lane, bounds }: Placed, lineOf: (row: number) => number): Note[] {
  const heading = match.source.heading || match.source.label;
  const notes: Note[] = [];
  if (lane.firstHeld && lane.held.size > 0) {
    const { row, text, why } = lane.firstHeld;
    notes.push(
      note('cells-held', {
        heading,
        count: lane.held.size,
        example: text,
        line: lineOf(row),
        why: sentence(why),
      }),
    );
  }
  const words = [...lane.missingSeen.keys()];
  if (words.length > 0) {
    const count = [...lane.missingSeen.values()].reduce((a, b) => a + b, 0);
    notes.push(
      note('missing-words', {
        heading,
        count,
        words: words
          .slice(0, 5)
          .map((w) => `"${w}"`)
          .join(', '),
      }),
    );
  }
  if (lane instanceof NumberLane)
    notes.push(...numberNotes(lane, match.source, bounds, match.column, lineOf));
  if (lane instanceof DateLane && lane.firstFuture)
    notes.push(
      note('future-dates', {
        heading,
        count: lane.future,
        value: lane.firstFuture.text,
        line: lineOf(lane.firstFuture.row),
      }),
    );
  if (lane instanceof TextLane && lane.firstApostrophe)
    notes.push(note('apostrophes', { heading, count: lane.apostrophes, example: lane.firstApostrophe.text }));
  if (lane instanceof TextLane && lane.firstLetter)
    notes.push(
      note('letters', {
        heading,
        count: lane.letters,
        example: lane.firstLetter.text,
        value: lane.firstLetter.choice,
      }),
    );
  if (lane instanceof TextLane && lane.firstFormulaLike)
    notes.push(
      note('formula-like', { heading, count: lane.formulaLike, example: lane.firstFormulaLike.text }),
    );
  return notes;
}

function numberNotes(
  lane: NumberLane,
  source: ColumnFinding,
  bounds: PlausibleColumn | null,
  column: Column,
  lineOf: (row: number) => number,
): Note[] {
  const heading = source.heading || source.label;
  const notes: Note[] = [];
  if (lane.firstOwnUnit)
    notes.push(note('own-units', { heading, count: lane.ownUnits, example: lane.firstOwnUnit.text }));
  if (lane.firstPerCent)
    notes.push(
      note('per-cent', {
        heading,
        example: lane.firstPerCent.text,
        value: lane.firstPerCent.text.replace(/\s*%$/, ''),
      }),
    );
  if (bounds && lane.firstOutside)
    notes.push(...outsideNotes(lane, bounds, heading, column, lineOf(lane.firstOutside.row)));
  return notes;
}

/** Factors by which people are wrong: metres, millimetres and inches for centimetres, tenths, pounds for kilograms. */
const slips: readonly (readonly [string, number])[] = [
  ['metres', 100],
  ['millimetres', 0.1],
  ['inches', 2.54],
  ['tenths', 0.1],
  ['pounds', 0.45359237],
  ['grams', 0.001],
];

function outsideNotes(
  lane: NumberLane,
  bounds: PlausibleColumn,
  heading: string,
  column: Column,
  line: number,
): Note[] {
  const unit = displayUnitOf(column)?.unit ?? '';
  const min = bounds.min ?? -Infinity;
  const max = bounds.max ?? Infinity;
  const range = `${bounds.min ?? ''} to ${bounds.max ?? ''}`;
  const because = bounds.because ?? '';
  const details = { heading, bounds: range, unit, because };
  const notes: Note[] = [
    note('out-of-bounds', { ...details, count: lane.outside, value: lane.firstOutside!.text, line }),
  ];
  const sorted = [...lane.sample].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined || (middle >= min && middle <= max)) return notes;
  const kind =
    column.dimension === 'mass'
      ? ['tenths', 'pounds', 'grams']
      : column.dimension === 'length'
        ? ['metres', 'millimetres', 'inches']
        : [];
  const slip = slips.find(([word, by]) => kind.includes(word) && middle * by >= min && middle * by <= max);
  if (slip)
    notes.push(
      note('factor-proposed', {
        ...details,
        value: Number(middle.toPrecision(4)),
        proposed: slip[0],
        wouldBe: Number((middle * slip[1]).toPrecision(4)),
      }),
    );
  return notes;
}
