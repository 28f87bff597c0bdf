import { type NumberUse, textOfNumber, useOfFormat } from './formats.ts';
import { Grid } from './grid.ts';
import { readXml, type XmlReader } from './xml.ts';

/** Opens an entry of the archive by name; undefined when there is none. */
export type OpenEntry = (name: string) => Iterable<Uint8Array> | undefined;

export interface SheetEntry {
  readonly name: string;
  readonly path: string;
  readonly hidden: boolean;
}

export interface XlsxFrame {
  readonly sheets: readonly SheetEntry[];
  readonly first1904: boolean;
}

/** The sheets of an Office Open XML workbook (ECMA-376), in order. */
export function* readFrame(open: OpenEntry, name: string): Generator<void, XlsxFrame> {
  const targets = new Map<string, string>();
  yield* readXml(
    open('xl/_rels/workbook.xml.rels'),
    {
      open(tag, a) {
        if (tag === 'Relationship' && a.Id && a.Target) targets.set(a.Id, a.Target);
      },
    },
    name,
  );
  const sheets: SheetEntry[] = [];
  let first1904 = false;
  yield* readXml(
    open('xl/workbook.xml'),
    {
      open(tag, a) {
        if (tag === 'workbookPr') first1904 = a.date1904 === '1' || a.date1904 === 'true';
        if (tag !== 'sheet') return;
        const target = targets.get(a['r:id'] ?? a.id ?? '') ?? '';
        const path = target.startsWith('/') ? target.slice(1) : `xl/${target}`;
        sheets.push({
          name: a.name ?? `Sheet ${sheets.length + 1}`,
          path,
          hidden: (a.state ?? 'visible') !== 'visible',
        });
      },
    },
    name,
  );
  return { sheets, first1904 };
}

/** The last column is XFD (ECMA-376 part 1, 18.3.1.73). */
const MOST_COLUMNS = 16_384;

/** Characters that XML cannot hold are written _x000D_. */
const plain = (text: string): string =>
  text.includes('_x')
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    : text;

/** The texts that cells refer to by number. Readings aids for pronunciation are no part of them. */
function* readSharedTexts(open: OpenEntry, name: string): Generator<void, string[]> {
  const texts: string[] = [];
  let text = '';
  let inText = false;
  let aid = 0;
  const reader: XmlReader = {
    open(tag) {
      if (tag === 'si') text = '';
      else if (tag === 'rPh') aid++;
      else if (tag === 't') inText = aid === 0;
    },
    text(t) {
      if (inText) text += t;
    },
    close(tag) {
      if (tag === 'si') texts.push(plain(text));
      else if (tag === 'rPh') aid--;
      else if (tag === 't') inText = false;
    },
  };
  yield* readXml(open('xl/sharedStrings.xml'), reader, name);
  return texts;
}

/** What the numbers of each cell style stand for. */
function* readStyles(open: OpenEntry, name: string): Generator<void, NumberUse[]> {
  const codes = new Map<number, string>();
  const formats: number[] = [];
  let inCells = false;
  yield* readXml(
    open('xl/styles.xml'),
    {
      open(tag, a) {
        if (tag === 'numFmt') codes.set(Number(a.numFmtId), a.formatCode ?? '');
        else if (tag === 'cellXfs') inCells = true;
        else if (tag === 'xf' && inCells) formats.push(Number(a.numFmtId ?? 0));
      },
      close(tag) {
        if (tag === 'cellXfs') inCells = false;
      },
    },
    name,
  );
  return formats.map((id) => useOfFormat(id, codes));
}

/** Column of a cell's address, from 0. */
function columnOf(address: string): number {
  let column = 0;
  for (let i = 0; i < address.length; i++) {
    const c = address.charCodeAt(i);
    if (c < 65 || c > 90) break;
    column = column * 26 + c - 64;
  }
  return column - 1;
}

/** One sheet's cells. Formulas give the values that were stored with them. */
export function* readSheet(
  open: OpenEntry,
  sheet: SheetEntry,
  first1904: boolean,
  name: string,
): Generator<void, Grid> {
  const shared = yield* readSharedTexts(open, name);
  const styles = yield* readStyles(open, name);
  const grid = new Grid(name);
  let at = -1;
  let row: string[] = [];
  let column = -1;
  let type = 'n';
  let use: NumberUse = 'number';
  let value = '';
  let formula = '';
  let taking = false;
  let inFormula = false;
  const cellText = (): string => {
    // A formula whose value was not stored comes as it stands: it is no blank.
    if (value === '' && formula !== '') return `=${formula}`;
    if (type === 's') return shared[Number(value)] ?? '';
    if (type === 'b') return value === '1' || value === 'true' ? 'true' : 'false';
    if (type === 'inlineStr' || type === 'str') return plain(value);
    if (type === 'e' || type === 'd') return value;
    const number = Number(value);
    return value.trim() === '' ? '' : Number.isFinite(number) ? textOfNumber(number, use, first1904) : value;
  };
  const reader: XmlReader = {
    open(tag, a) {
      if (tag === 'row') {
        at = a.r === undefined ? at + 1 : Number(a.r) - 1;
        row = [];
        column = -1;
      } else if (tag === 'c') {
        column = a.r === undefined ? column + 1 : columnOf(a.r);
        type = a.t ?? 'n';
        use = styles[Number(a.s ?? 0)] ?? 'number';
        value = '';
        formula = '';
      } else if (tag === 'f') inFormula = true;
      else if (tag === 'v' || tag === 't') taking = true;
    },
    text(t) {
      if (taking) value += t;
      else if (inFormula) formula += t;
    },
    close(tag) {
      if (tag === 'v' || tag === 't') taking = false;
      else if (tag === 'f') inFormula = false;
      else if (tag === 'c' && column >= 0) {
        if (column >= MOST_COLUMNS) grid.refuse();
        while (row.length < column) row.push('');
        row[column] = cellText();
      } else if (tag === 'row') grid.add(at, row);
    },
  };
  yield* readXml(open(sheet.path), reader, name);
  return grid;
}
