/** Why a cell is unreadable, or a row was not imported. */
import { many, mark, order, type Say } from './wording.ts';

export const unreadable = {
  // Held cells.
  'not-a-number': (d) =>
    `"${d.text}" is not a number. A number such as ${d.example} is accepted here. Correct it or clear it.`,
  'number-too-large': (d) => `"${d.text}" is larger than any number can be. Correct it or clear it.`,
  'other-mark': (d) =>
    `"${d.text}" has another decimal mark than this column, which has a ${mark(d.mark)}. Write ${d.write} if that is meant.`,
  'lone-unit': (d) =>
    `"${d.text}" carries a unit; the cells of this column are plain numbers in ${d.unit}. Write ${d.write} if that is meant.`,
  'other-unit': (d) =>
    `"${d.text}" is in ${d.unit}, which is not a unit of ${d.dimension}. Give the value in ${d.expected} or clear it.`,
  'unit-without-dimension': (d) =>
    `"${d.text}" carries the unit ${d.unit}, but the column has none. Give the column a unit, or take it off.`,
  'row-without-unit': (d) =>
    `"${d.text}" has no unit in its row, though the file gives one for the other rows. Give its unit or clear it.`,
  'row-unit-unknown': (d) =>
    `"${d.text}" has the unit "${d.unit}" in its row, which is not known. Give it as kg, lb, cm or in.`,
  'not-a-date': (d) =>
    `"${d.text}" is not a date in the order ${order[String(d.order)]}. Correct it, for example as ${d.example}.`,
  'not-a-duration': (d) =>
    `"${d.text}" is not a duration. Minutes (75), "75 min" or ${d.clock} such as ${d.example} are accepted.`,
  'not-yes-no': (d) => `"${d.text}" is neither yes (${d.yes}) nor no (${d.no}). Correct it or clear it.`,
  'not-a-choice': (d) => `"${d.text}" is none of the choices: ${d.choices}. Correct it, or add the choice.`,

  // Held rows.
  'too-many-cells': (d) =>
    `The row has ${many(d.cells, 'cell')} where the headings name ${d.columns}. Look for a mark inside a cell that should be in quotes.`,
  'too-few-cells': (d) =>
    `The row has ${many(d.cells, 'cell')} where the headings name ${d.columns}. Look for a line break inside a cell, or fill in what is missing.`,
  'cell-too-long': (d) =>
    `A cell of this row has ${Number(d.length).toLocaleString('en')} characters; at most ${Number(d.most).toLocaleString('en')} are accepted. Look for a quote that was not closed, or shorten it.`,
  'open-quote': () =>
    'A quote is opened on this line and not closed properly, so its cells cannot be told apart. Close the quote or take it out.',
  'name-missing': () => 'The row has a value but does not say for which column. Fill that in.',
  'place-taken': (d) =>
    `The file has more than one value for "${d.name}" of this row; the first was taken. Decide which is right.`,
  'key-missing': (d) => `The row has no ${d.key}, by which rows are recognised. Fill it in.`,
  'key-twice': (d) =>
    `The file has ${d.key} = "${d.value}" more than once; the first of them was taken. Decide which is right.`,
  'row-differs': (d) =>
    `The sheet has this row already, with other values: ${d.what}. Change them there, or import the row as a file and say how it should be handled.`,
} satisfies Record<string, Say>;
