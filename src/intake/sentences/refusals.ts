/** Why a file or its import settings are refused: what arrived, what is accepted, what to do. */
import { bytes, file, many, type Say } from './wording.ts';

const ACCEPTED =
  'a text table (CSV: commas, semicolons, tabs or bars between the cells) or a workbook (.xlsx, .ods)';

export const refusals = {
  'empty-file': (d) =>
    `${file(d)} is empty (0 bytes). The intake takes ${ACCEPTED}. Export it again, or choose another file.`,
  'blank-file': (d) =>
    `${file(d)} holds nothing but blank lines. The intake takes ${ACCEPTED}. Export it again, or choose another file.`,
  'too-large': (d) =>
    `${file(d)} has ${bytes(d.size)}; the intake takes up to ${bytes(d.largest)} at once. Split it, or leave out columns.`,
  'only-headings': (d) =>
    `${file(d)} has headings (${many(d.columns, 'column')}) but no row under them. The intake needs at least one row. Export it again with its data.`,
  'not-a-table': (d) =>
    `${file(d)} is ${d.what}, not a table. The intake takes ${ACCEPTED}. ${d.remedy ?? 'Export the table as CSV first.'}`,
  'is-a-book': (d) =>
    `${file(d)} is a book, not a table to import. Open it as a book; the intake takes ${ACCEPTED}.`,
  'no-matching-column': (d) =>
    `None of the ${many(d.count, 'heading')} of ${file(d)} (${d.headings}) fits a column of sheet "${d.sheet}" (${d.columns}). Select another sheet, import into a new one, or rename the headings.`,
  'settings-tie': (d) =>
    `${file(d)} fits the import settings "${d.one}" and "${d.other}" equally well. Select one of them.`,
  'recipe-misses': (d) =>
    `${file(d)} has no column "${d.heading}", which the import settings "${d.recipe}" need for "${d.column}". Its columns: ${d.headings}. Import into a new sheet, or use other settings.`,
  'recipe-column-unknown': (d) =>
    `The import settings "${d.recipe}" fill a column "${d.column}", and sheet "${d.sheet}" has none of that name. Its columns: ${d.columns}. Add the column, or use other settings.`,
  'recipe-broken': (d) =>
    `The import settings "${d.recipe}" cannot be read: ${d.problem}. Import the file without them.`,
  'unknown-unit': (d) =>
    `The import settings give column "${d.column}" the unit "${d.unit}", which is not known. Known units: ${d.known}.`,
  'unit-of-other-dimension': (d) =>
    `The import settings read "${d.heading}" in ${d.unit} (${d.found}), but column "${d.column}" contains ${d.dimension}. Change the unit or the column.`,

  'unknown-encoding': (d) =>
    `"${d.encoding}" is no encoding known here. Choose one such as utf-8, utf-16le, windows-1252 or iso-8859-2; the file looks like ${d.found}.`,
  'nothing-repeats': (d) =>
    `${file(d)} has no columns that repeat, such as dates or "Set 1, Set 2", so it cannot be made long. Its headings: ${d.headings}. Leave its shape as it is.`,
  'shape-misses': (d) =>
    `${file(d)} has no column "${d.heading}", which the new shape needs. The file has: ${d.headings}. Select another column.`,
  'no-key': (d) =>
    `Updating needs a column by which rows are recognised${d.key ? `; "${d.key}" is none that the file fills` : ''}. Columns that it fills: ${d.columns}.`,

  'workbook-damaged': (d) =>
    `${file(d)} is a zipped workbook, but damaged or of a kind that is not known here. Open it where it was made and save it again, or save it as CSV.`,
  'workbook-locked': (d) =>
    `${file(d)} is locked with a password. Save it without one, or save its table as CSV.`,
  'workbook-too-large': (d) =>
    `${file(d)} unpacks to more than ${bytes(d.largest)}, which a table of measures hardly needs; it was not opened. Save the one table as CSV.`,
  'workbook-cells': (d) =>
    `${file(d)} fills more than ${Number(d.most).toLocaleString('en')} cells; it was not opened. Save the part you need as CSV.`,
  'workbook-wide': (d) =>
    `${file(d)} has a row with more than ${Number(d.most).toLocaleString('en')} cells. Save the table alone, or save it as CSV.`,
  'workbook-no-table': (d) =>
    `${file(d)} has no table ${d.table ? `"${d.table}"` : 'with rows'}. Its tables: ${d.tables || 'none'}.`,
  'too-many-columns': (d) =>
    `Sheet "${d.sheet}" would have ${Number(d.columns).toLocaleString('en')} columns with those of ${file(d)}; a sheet has at most ${Number(d.most).toLocaleString('en')}. Leave columns out, or make rows of columns that repeat.`,
  'too-many-rows': (d) =>
    `Sheet "${d.sheet}" would have more than ${Number(d.most).toLocaleString('en')} rows with those of ${file(d)}, or the book too many cells. Split the file, or leave out columns.`,
  'workbook-unopened': (d) =>
    `${file(d)} is a zipped workbook, which has to be opened before its tables can be read. Choose one of its tables.`,
} satisfies Record<string, Say>;
