/** Writes a book as an XLSX file. */
import { type Cell, type CellStyle, type WriteSheet, writeXlsx } from 'hucre/xlsx';
import { Kind } from '../../../functions/core/value.ts';
import { a1Text } from '../../calc/a1/index.ts';
import { ABOVE, type ColumnContent, type SheetContent, type WorkbookContent } from './shape.ts';

const DATE = 'yyyy-mm-dd';

/** Error values that a workbook file knows; what only this program has comes out as one of them. */
const errors = new Set(['#DIV/0!', '#N/A', '#NAME?', '#NUM!', '#REF!', '#VALUE!']);
const errorText = (code: string): string => (errors.has(code) ? code : '#VALUE!');

/** What an error of this program's own hides: the formula may not come back there either. */
const isOwnError = (column: ColumnContent, row: number): boolean =>
  column.kinds[row] === Kind.error && !errors.has(column.texts[row] ?? '');

const font = { name: 'Arial', size: 10 };
/** Height of a line of it, in points. */
const LINE = 13.5;

const headingStyle: CellStyle = {
  font: { ...font, bold: true },
  fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'E9E6DC' } },
  border: { bottom: { style: 'thin', color: { rgb: '6B6A64' } } },
  alignment: { wrapText: true, vertical: 'bottom' },
};

const right = { ...headingStyle.alignment, horizontal: 'right' } as const;
/** Numbers stand at the right, and so does their heading. */
const isOfNumbers = ({ kinds }: ColumnContent): boolean =>
  kinds.some((kind) => kind === Kind.number || kind === Kind.date);

/** The bytes of an XLSX file (ISO/IEC 29500-1). Nothing that came as text is ever written as a formula. */
export async function writeWorkbook(content: WorkbookContent, now: Date): Promise<Uint8Array> {
  const sheets = content.sheets.map(sheetOf);
  return writeXlsx({
    sheets: [...sheets, aboutSheet(content.about)],
    namedRanges: [
      ...content.names,
      ...content.sheets.map(({ name }) => ({
        name: '_xlnm.Print_Titles',
        range: `'${name.replaceAll("'", "''")}'!$1:$1`,
        scope: name,
      })),
    ],
    properties: { title: content.title, created: now, modified: now },
    defaultFont: font,
  });
}

function sheetOf(sheet: SheetContent): WriteSheet {
  const styles = sheet.columns.map(styleOf);
  const widths = sheet.columns.map(widthOf);
  const rows: (string | number | boolean | null)[][] = [sheet.columns.map(() => null)];
  const cells = new Map<string, Partial<Cell>>();
  sheet.columns.forEach((column, c) => {
    cells.set(`0,${c}`, {
      ...textCell(column.heading),
      style: isOfNumbers(column) ? { ...headingStyle, alignment: right } : headingStyle,
    });
  });
  for (let row = 0; row < sheet.rows; row++) {
    const at = row + ABOVE;
    rows.push(
      sheet.columns.map((column, c) => {
        const value = valueAt(column, row);
        const formula = formulaAt(column, row);
        const dated = column.kinds[row] === Kind.date && column.numbers !== 'date';
        if (formula !== undefined && value !== null)
          cells.set(`${at},${c}`, { formula, formulaResult: value });
        else if (column.kinds[row] === Kind.text && needsCare(value as string))
          cells.set(`${at},${c}`, textCell(value as string));
        const unit = column.unitOf?.get(row);
        if (unit !== undefined) {
          const style = { numFmt: `${figuresOf(column)}" ${unit}"` };
          cells.set(`${at},${c}`, { value, ...cells.get(`${at},${c}`), style });
        }
        if (dated) cells.set(`${at},${c}`, { ...cells.get(`${at},${c}`), style: { numFmt: DATE } });
        return value;
      }),
    );
  }
  return {
    name: sheet.name,
    rows,
    cells,
    rowDefs: new Map([
      [
        0,
        {
          height: LINE * Math.max(...sheet.columns.map(({ heading }, c) => linesOf(heading, widths[c]!))) + 4,
        },
      ],
    ]),
    columns: sheet.columns.map((column, c) => ({
      width: widths[c]!,
      hidden: column.hidden,
      ...(styles[c] ? { style: styles[c] } : {}),
    })),
    freezePane: { rows: ABOVE, ...(sheet.frozen > 0 ? { columns: sheet.frozen } : {}) },
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    headerFooter: { oddFooter: '&L&A&R&P / &N' },
  };
}

function valueAt(column: ColumnContent, row: number): string | number | boolean | null {
  switch (column.kinds[row]) {
    case Kind.number:
    case Kind.date:
      return column.values[row]!;
    case Kind.yesNo:
      return column.values[row] !== 0;
    case Kind.text:
      return column.texts[row]!;
    case Kind.error:
      return errorText(column.texts[row]!);
    default:
      return null;
  }
}

function formulaAt(column: ColumnContent, row: number): string | undefined {
  const formula = column.formulas.get(row) ?? (column.own.has(row) ? undefined : column.formula);
  return formula && !isOwnError(column, row) ? a1Text(formula, row, ABOVE) : undefined;
}

/** Texts that the library would take for something else: the name of an error, or a written-out character. */
const needsCare = (text: string): boolean => text.startsWith('#') || text.includes('_x');

/** A text that stays one. A character code that was typed as such gets its mark written out (18.4.12, ST_Xstring). */
function textCell(text: string): Partial<Cell> {
  const written = text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
  return text.startsWith('#') ? { value: written, richText: [{ text: written }] } : { value: written };
}

/** As a number format says it: a column's digits, or as many as the number has. */
function figuresOf({ numbers }: ColumnContent): string {
  if (typeof numbers !== 'object') return 'General';
  const { digits } = numbers;
  return digits === undefined ? '0.##' : digits === 0 ? '0' : `0.${'0'.repeat(digits)}`;
}

function styleOf(column: ColumnContent): CellStyle | undefined {
  const { numbers } = column;
  if (numbers === 'plain') return undefined;
  if (numbers === 'date') return { numFmt: DATE };
  const figures = figuresOf(column);
  return { numFmt: numbers.percent ? `${figures}%` : figures };
}

/** Pixels to the width of so many figures, with the room that a cell leaves at its sides; else wide enough to read. */
function widthOf({ width, heading, numbers, texts }: ColumnContent): number {
  if (width !== undefined) return Math.max(4, Math.round((width - 5) / 7));
  const word = Math.max(...heading.split(' ').map(({ length }) => length));
  const longest = texts.slice(0, 1000).reduce((most, text) => Math.max(most, text?.length ?? 0), 0);
  return Math.max(numbers === 'date' ? 11 : 9, word + 2, Math.min(40, longest + 2));
}

/** Lines that a text takes in a cell so wide, roughly: words stay whole. */
const linesOf = (text: string, width: number): number => Math.max(1, Math.ceil((text.length * 1.05) / width));

function aboutSheet({ name, rows }: WorkbookContent['about']): WriteSheet {
  const cells = new Map<string, Partial<Cell>>();
  const rowDefs = new Map<number, { height: number }>();
  const widths = [18, 26, 20, 8, 50, 52, 50];
  let table = false;
  rows.forEach((row, r) => {
    const isHead = row.length > 1 && !table;
    table ||= isHead;
    const lines = row.length > 1 ? Math.max(...row.map((text, c) => linesOf(text, widths[c]!))) : 1;
    if (lines > 1) rowDefs.set(r, { height: lines * LINE + 2 });
    row.forEach((text, c) => {
      if (text !== '')
        cells.set(`${r},${c}`, {
          ...textCell(text),
          ...(isHead
            ? { style: headingStyle }
            : row.length > 1
              ? { style: { alignment: { vertical: 'top', wrapText: true } } }
              : {}),
        });
    });
  });
  return {
    name,
    rows: rows.map((row) => row.map(() => null)),
    cells,
    rowDefs,
    columns: widths.map((width) => ({ width })),
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
  };
}
