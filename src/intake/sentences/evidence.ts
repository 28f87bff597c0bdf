/** From what something was found out about a file or one of its columns. */
import { many, mark, order, type Say } from './wording.ts';

export const evidence = {
  // Of the file.
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
  'units-below': (d) => `The line under the headings gives units: ${d.example}.`,
  'no-units-below': () => 'The line under the headings is a row.',
  'no-footer': () => 'The last lines are rows like the others.',
  'footer-words': (d) => `The last lines start with words like "${d.word}".`,
  'rows-complete': () => 'A row with fewer cells than headings is an exception here and may be damaged.',
  'rows-often-short': (d) =>
    `${many(d.count, 'row')} of ${d.rows} end early: this file leaves out blank cells at the end.`,
  chosen: () => 'You chose it.',

  'from-workbook': (d) => `The cells come from the table "${d.table}" of a workbook.`,

  // Of a column.
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
} satisfies Record<string, Say>;
