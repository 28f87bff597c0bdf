/** What the report of an import says about its rows and columns. */
import { column, many, type Say } from './wording.ts';

const sameBy: Record<string, string> = {
  decision: 'as decided before',
  spelling: 'but for case and blanks',
  accents: 'but for accents',
  order: 'its names in another order',
  identifier: 'by its identifier',
  'birth date': 'by birth date and given name',
};

export const reportNotes = {
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
