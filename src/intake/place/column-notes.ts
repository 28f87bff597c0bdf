import type { Column } from '../../book/model.ts';
import { displayUnitOf } from '../../units/unit.ts';
import type { ColumnFinding, PlausibleColumn } from '../api.ts';
import { DateColumnBuilder, NumberColumnBuilder, TextColumnBuilder } from '../cells/index.ts';
import { type Note, note, sentence } from '../sentences/index.ts';
import type { Placed } from './placed.ts';

/** What to know about a column of the file after its cells were read. */
export function columnNotes({ match, builder, bounds }: Placed, lineOf: (row: number) => number): Note[] {
  const heading = match.source.heading || match.source.label;
  const notes: Note[] = [];
  if (builder.firstHeld && builder.held.size > 0) {
    const { row, text, why } = builder.firstHeld;
    notes.push(
      note('cells-held', {
        heading,
        count: builder.held.size,
        example: text,
        line: lineOf(row),
        why: sentence(why),
      }),
    );
  }
  const words = [...builder.missingSeen.keys()];
  if (words.length > 0) {
    const count = [...builder.missingSeen.values()].reduce((a, b) => a + b, 0);
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
  if (builder instanceof NumberColumnBuilder)
    notes.push(...numberNotes(builder, match.source, bounds, match.column, lineOf));
  if (builder instanceof DateColumnBuilder && builder.firstFuture)
    notes.push(
      note('future-dates', {
        heading,
        count: builder.future,
        value: builder.firstFuture.text,
        line: lineOf(builder.firstFuture.row),
      }),
    );
  if (builder instanceof TextColumnBuilder && builder.firstApostrophe)
    notes.push(
      note('apostrophes', { heading, count: builder.apostrophes, example: builder.firstApostrophe.text }),
    );
  if (builder instanceof TextColumnBuilder && builder.firstLetter)
    notes.push(
      note('letters', {
        heading,
        count: builder.letters,
        example: builder.firstLetter.text,
        value: builder.firstLetter.choice,
      }),
    );
  if (builder instanceof TextColumnBuilder && builder.firstFormulaLike)
    notes.push(
      note('formula-like', { heading, count: builder.formulaLike, example: builder.firstFormulaLike.text }),
    );
  return notes;
}

function numberNotes(
  builder: NumberColumnBuilder,
  source: ColumnFinding,
  bounds: PlausibleColumn | null,
  column: Column,
  lineOf: (row: number) => number,
): Note[] {
  const heading = source.heading || source.label;
  const notes: Note[] = [];
  if (builder.firstOwnUnit)
    notes.push(note('own-units', { heading, count: builder.ownUnits, example: builder.firstOwnUnit.text }));
  if (builder.firstPerCent)
    notes.push(
      note('per-cent', {
        heading,
        example: builder.firstPerCent.text,
        value: builder.firstPerCent.text.replace(/\s*%$/, ''),
      }),
    );
  if (bounds && builder.firstOutside)
    notes.push(...outsideNotes(builder, bounds, heading, column, lineOf(builder.firstOutside.row)));
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
  builder: NumberColumnBuilder,
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
    note('out-of-bounds', { ...details, count: builder.outside, value: builder.firstOutside!.text, line }),
  ];
  const sorted = [...builder.sample].sort((a, b) => a - b);
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
