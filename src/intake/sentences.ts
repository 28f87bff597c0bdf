/** Something to say about a file, as data. The sentence is made last, here and nowhere else. */
export interface Note {
  readonly reason: Reason;
  readonly details: Details;
}
export type Details = Readonly<Record<string, string | number>>;

type Say = (d: Details) => string;
const many = (n: string | number | undefined, one: string, more = `${one}s`): string =>
  `${Number(n).toLocaleString('en')} ${Number(n) === 1 ? one : more}`;
const bytes = (n: string | number | undefined): string =>
  Number(n) >= 1e6 ? `${(Number(n) / 1e6).toFixed(0)} MB` : `${Number(n).toLocaleString('en')} bytes`;
const file = (d: Details): string => (d.name ? `"${d.name}"` : 'The file');
const column = (d: Details): string => `Column "${d.heading}"`;
const markNames: Record<string, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'vertical bar',
  '"': 'double quote',
  "'": 'single quote',
  '.': 'point',
};
const mark = (m: string | number | undefined): string => markNames[String(m)] ?? `"${m}"`;
const order: Record<string, string> = { ymd: 'year-month-day', dmy: 'day-month-year', mdy: 'month-day-year' };

const sameBy: Record<string, string> = {
  decision: 'as decided before',
  spelling: 'but for case and blanks',
  accents: 'but for accents',
  order: 'its names in another order',
  identifier: 'by its identifier',
  'birth date': 'by birth date and given name',
};

const ACCEPTED =
  'a text table (CSV: commas, semicolons, tabs or bars between the cells) or a workbook (.xlsx, .ods)';

/** Every sentence of the intake, by its reason. */
export const sentences = {
  // Refusals: what arrived, what is accepted, what to do.
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

  // Evidence.
  'byte-order-mark': (d) => `The file starts with the byte order mark of ${d.encoding}.`,
  'zero-bytes': (d) => `Every other byte is 0, as in ${d.encoding}.`,
  'only-ascii': () => 'Every byte is plain ASCII, which reads the same in every encoding considered.',
  'valid-utf-8': (d) => `${many(d.count, 'byte')} beyond ASCII, and all of them are valid UTF-8.`,
  'not-utf-8': (d) =>
    `${many(d.count, 'byte')} beyond ASCII that ${Number(d.count) === 1 ? 'is' : 'are'} not UTF-8; they read well as ${d.encoding}, for example "${d.example}".`,
  'damaged-utf-8': (d) =>
    `The file is UTF-8 but for ${many(d.count, 'damaged byte')}, shown as �. Look at the marked cells.`,
  'consistent-fields': (d) =>
    `Split at each ${mark(d.mark)}, ${d.matching} of ${d.rows} lines come to ${many(d.fields, 'cell')}.`,
  'one-column': () => 'No mark splits the lines; the file has one column.',
  'said-by-file': (d) => `The file's first line says so: ${d.line}.`,
  'quotes-seen': (d) => `${many(d.count, 'cell')} of the first lines are in ${mark(d.mark)}s.`,
  'no-quotes': () => 'No cell of the first lines is quoted.',
  'no-preamble': () => 'Nothing is above the table.',
  'first-full-line': (d) => `Line ${d.line} is the first that is filled like the rows below it.`,
  'no-headings': () => 'The first line reads like the rows below it, so the columns are numbered.',
  'two-headings': () => 'Two lines are above the first row; the upper one groups the lower one.',
  'one-heading': () => 'One line of texts is above the first row.',
  'units-below': (d) => `The line under the headings holds units: ${d.example}.`,
  'no-units-below': () => 'The line under the headings is a row.',
  'no-footer': () => 'The last lines are rows like the others.',
  'footer-words': (d) => `The last lines start with words like "${d.word}".`,
  'rows-complete': () => 'A row with fewer cells than headings is an exception here and may be damaged.',
  'rows-often-short': (d) =>
    `${many(d.count, 'row')} of ${d.rows} end early: this file leaves out blank cells at the end.`,
  chosen: () => 'You chose it.',

  'from-workbook': (d) => `The cells come from the table "${d.table}" of a workbook.`,

  // Columns.
  'cells-fit': (d) => `${d.fit} of ${many(d.filled, 'filled cell')} read as ${d.kind}.`,
  'no-cells': () => 'All cells seen are blank.',
  'leading-zeros': (d) => `Numbers with leading zeros such as "${d.example}" are labels, imported as text.`,
  'unit-in-heading': (d) => `The heading says "${d.word}".`,
  'unit-in-cells': (d) => `${many(d.count, 'cell')} carry the unit "${d.word}".`,
  'units-in-column': (d) => `Column "${d.heading}" gives the unit of each row: ${d.units}.`,
  'unit-column-named': (d) => `The heading "${d.word}" names the number.`,
  'unit-column-alone': (d) => `Only ${d.columns} can be in these units.`,
  'unit-column-open': (d) => `The units may be those of ${d.columns}. Say which.`,
  'row-is-set-open': (d) => `"${d.word}" numbers the sets, and nothing counts them.`,
  'unit-below-heading': (d) => `The line under the heading says "${d.word}".`,
  'no-unit': () => 'Nothing says a unit.',
  'decimal-seen': (d) => `${many(d.count, 'cell')} like "${d.example}".`,
  'decimal-elsewhere': (d) => `Other columns of the file use a decimal ${mark(d.mark)}.`,
  'decimal-none': () => 'No cell has decimals.',
  'decimal-ambiguous': (d) =>
    `"${d.example}" could be thousands or decimals; taken with a decimal ${mark(d.mark)}.`,
  'date-order-proven': (d) => `"${d.example}" can only be ${order[String(d.order)]}.`,
  'date-order-written': (d) => `Dates like "${d.example}" say their order themselves.`,
  'date-order-open': (d) =>
    `Every date fits both day-month and month-day, such as "${d.example}"; taken as ${order[String(d.order)]}. Say which it is.`,
  'date-order-mixed': (d) =>
    `Some dates can only be day-month ("${d.dmy}"), others only month-day ("${d.mdy}"); taken as ${order[String(d.order)]}, the others are unreadable.`,
  'clock-proven': (d) => `"${d.example}" can only be ${d.clock}.`,
  'clock-said': (d) => `The heading says "${d.word}".`,
  'clock-open': (d) =>
    `"${d.example}" could be hours and minutes or minutes and seconds; taken as ${d.clock}. Say which it is.`,

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

  // Notes of a report.
  'units-taken': (d) => `${column(d)} gives the unit of ${d.columns}, row by row.`,
  'weight-is-load': (d) => `${column(d)} is the load here, as in a training log, not body mass.`,
  'rows-are-sets': () => 'Each row counts as one set.',
  'duplicate-heading': (d) =>
    `The heading "${d.heading}" is over ${many(d.count, 'column')}; they are told apart as ${d.names}.`,
  'blank-heading': (d) =>
    `Column ${d.position} has cells but no heading; it is called "${d.label}". Name it if it matters.`,
  'cells-held': (d) =>
    `${column(d)}: ${many(d.count, 'cell')} unreadable, such as "${d.example}" on line ${d.line}: ${d.why}`,
  'missing-words': (d) =>
    `${column(d)}: ${many(d.count, 'cell')} with ${d.words} taken as missing and left blank.`,
  'own-units': (d) =>
    `${column(d)}: ${many(d.count, 'cell')} with the unit in the cell, such as "${d.example}", read in that unit.`,
  'time-zones': (d) =>
    `${column(d)}: ${many(d.count, 'date')} with a time zone, such as "${d.example}"; the time is taken as it is written.`,
  'per-cent': (d) => `${column(d)}: per cent signs left off, so "${d.example}" is ${d.value}.`,
  'formula-like': (d) =>
    `${column(d)}: ${many(d.count, 'cell')} start like a formula, such as "${d.example}"; they are imported as text and never computed.`,
  'computed-column': (d) =>
    `${column(d)} was left out: "${d.column}" is computed by its formula in this sheet.`,
  'columns-left-out': (d) => `${many(d.count, 'column')} of the file left out: ${d.headings}.`,
  'new-column': (d) => `${column(d)} became the new column "${d.column}".`,
  'column-computed': (d) => `The new column "${d.column}" is computed in each row: ${d.rule}`,
  'rows-held': (d) =>
    `${many(d.count, 'row')} ${Number(d.count) === 1 ? 'was' : 'were'} not imported; the import history has ${Number(d.count) === 1 ? 'it' : 'them'}.`,
  'short-rows-placed': (d) => `${many(d.count, 'row')} ended early; the cells that lack are blank.`,
  'footer-apart': (d) => `${many(d.count, 'line')} at the end set apart: "${d.raw}".`,
  'headings-again': (d) => `${many(d.count, 'line')} repeat the headings and were skipped.`,
  'seen-before': (d) =>
    `${many(d.count, 'row')} ${Number(d.count) === 1 ? 'is in the sheet already and was' : 'are in the sheet already and were'} not entered again.`,
  'held-aside': (d) =>
    `${many(d.count, 'cell')} of the file that cannot be read ${Number(d.count) === 1 ? 'does' : 'do'} not replace the values there.`,
  'differing-left': (d) =>
    `${many(d.count, 'row')} ${Number(d.count) === 1 ? 'differs from the row' : 'differ from the rows'} there with the same ${d.key}: left as they are. ${d.what}.`,
  'differing-added': (d) =>
    `${many(d.count, 'row')} ${Number(d.count) === 1 ? 'differs from the row' : 'differ from the rows'} there with the same ${d.key}: added as further rows. ${d.what}.`,
  'duplicate-rows': (d) =>
    `${many(d.count, 'row')} in the file ${Number(d.count) === 1 ? 'is' : 'are'} the same as an earlier one, the first on line ${d.line}; all of them were placed.`,
  'out-of-bounds': (d) =>
    `${column(d)}: ${many(d.count, 'value')} outside ${d.bounds} ${d.unit}${d.because ? ` (${d.because})` : ''}, such as ${d.value} on line ${d.line}. They are placed; look at them.`,
  'factor-proposed': (d) =>
    `${column(d)}: its middle value is ${d.value} ${d.unit}, outside ${d.bounds}. Read in ${d.proposed} it would be ${d.wouldBe} ${d.unit}. Change the unit if that is right.`,
  'future-dates': (d) =>
    `${column(d)}: ${many(d.count, 'date')} in the future, such as ${d.value} on line ${d.line}. Look at them.`,
  repeats: (d) =>
    `${many(d.count, 'column')} repeat the same measure (${d.example}). They can become rows, one for each ${d.name}.`,
  'as-it-is': () => 'No columns repeat the same measure.',
  'spelling-proposed': (d) =>
    `${column(d)} is close to "${d.column}" in spelling, but was not taken for it. Rename it, or select that column.`,
  'content-proposed': (d) =>
    `${column(d)} holds what only "${d.column}" holds in this sheet, but was not taken for it. Rename it, or say so.`,
  'by-position': (d) => `The rows have no headings; their cells went to the columns in order: ${d.columns}.`,
  'made-long': (d) =>
    `${many(d.rows, 'row')} of the file became ${many(d.made, 'row')}, one for each ${d.name}.`,
  'made-wide': (d) =>
    `${many(d.rows, 'row')} of the file became ${many(d.made, 'row')}, one column for each ${d.name}.`,
  apostrophes: (d) =>
    `${column(d)}: ${many(d.count, 'cell')} with an apostrophe that protects from being run as a formula, such as "${d.example}"; it was taken off.`,
  letters: (d) =>
    `${column(d)}: ${many(d.count, 'cell')} with a letter that starts one of the choices, such as "${d.example}"; it was taken for ${d.value}.`,
  'total-differs': (d) =>
    `${column(d)}: the file's last lines give ${d.word} ${d.given}, but its rows come to ${d.computed}. A row may be missing, or counted twice.`,
  'who-same': (d) =>
    `${column(d)}: "${d.text}" is "${d.value}" of ${d.roster} (${sameBy[String(d.by)] ?? d.by}); ${many(d.count, 'row')} got that spelling.`,
  'who-close': (d) =>
    `${column(d)}: "${d.text}" (${many(d.count, 'row')}) may be ${d.values} of ${d.roster}. Say so, or leave it as somebody else.`,
  'who-unknown': (d) =>
    `${column(d)}: ${d.texts} ${Number(d.count) === 1 ? 'is' : 'are'} not in ${d.roster}. Add them there, or say who is meant.`,
  'column-doubt': (d) => `${column(d)}: ${d.why}`,
  'row-doubt': (d) => `${many(d.count, 'row')}: ${d.doubt} (first on line ${d.line}).`,
  'looked-at-part': (d) =>
    `The file is long: these findings rest on its first ${d.rows} rows and its end. Every row is checked when it is placed.`,
} satisfies Record<string, Say>;

export type Reason = keyof typeof sentences;

export const note = (reason: Reason, details: Details = {}): Note => ({ reason, details });

/** The sentence for a note. */
export const sentence = (n: Note): string => (sentences[n.reason] as Say)(n.details);

/** A file or a recipe that the intake does not take; the message is one sentence for the user. */
export class IntakeRefusal extends Error {
  override readonly name = 'IntakeRefusal';
  readonly note: Note;
  constructor(reason: Reason, details: Details = {}) {
    const why = note(reason, details);
    super(sentence(why));
    this.note = why;
  }
}
