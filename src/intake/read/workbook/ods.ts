import { Grid } from './grid.ts';
import type { OpenEntry } from './xlsx.ts';
import { type Attributes, readXml, type XmlReader } from './xml.ts';

/** Names of the tables of an OpenDocument spreadsheet (ISO/IEC 26300), in order. */
export function* readTables(open: OpenEntry, name: string): Generator<void, string[]> {
  const tables: string[] = [];
  yield* readXml(
    open('content.xml'),
    {
      open(tag, a) {
        if (tag === 'table') tables.push(a.name ?? `Table ${tables.length + 1}`);
      },
    },
    name,
  );
  return tables;
}

const MOST_REPEATS = 4000;

/** PT01H15M30S as 1:15:30. */
function timeText(iso: string): string {
  const m = /^-?P(?:(\d+)D)?T?(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?$/.exec(iso);
  if (!m) return iso;
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${Number(m[1] ?? 0) * 24 + Number(m[2] ?? 0)}:${two(Number(m[3] ?? 0))}:${two(Math.round(Number(m[4] ?? 0)))}`;
}

/** A cell's text by its declared type; texts come from its paragraphs. */
function cellText(a: Attributes, paragraphs: string): string {
  switch (a['value-type']) {
    case 'float':
    case 'currency':
      return String(Number(a.value));
    case 'percentage':
      return `${Number((Number(a.value) * 100).toPrecision(15))}%`;
    case 'date':
      return a['date-value'] ?? paragraphs;
    case 'time':
      return timeText(a['time-value'] ?? '');
    case 'boolean':
      return a['boolean-value'] ?? '';
    default:
      return a['string-value'] ?? paragraphs;
  }
}

/** One table's cells. Formulas give the values that were stored with them. */
export function* readTable(open: OpenEntry, table: string, name: string): Generator<void, Grid> {
  const grid = new Grid(name);
  let current = '';
  let tables = 0;
  let depth = 0;
  let at = 0;
  let row: string[] = [];
  let repeatedRows = 1;
  let cell: Attributes | null = null;
  let text = '';
  let paragraphs = 0;
  let remark = 0;
  const reader: XmlReader = {
    open(tag, a) {
      if (tag === 'table') {
        tables++;
        if (depth++ === 0) current = a.name ?? `Table ${tables}`;
      } else if (current !== table) return;
      else if (tag === 'table-row') {
        row = [];
        repeatedRows = Number(a['number-rows-repeated'] ?? 1);
      } else if (tag === 'table-cell' || tag === 'covered-table-cell') {
        cell = a;
        text = '';
        paragraphs = 0;
      } else if (tag === 'annotation') remark++;
      else if (remark > 0) return;
      else if (tag === 'p' && paragraphs++ > 0) text += '\n';
      else if (tag === 's') text += ' '.repeat(Math.min(Number(a.c ?? 1), 1000));
      else if (tag === 'tab') text += '\t';
      else if (tag === 'line-break') text += '\n';
    },
    text(t) {
      if (cell && remark === 0 && paragraphs > 0) text += t;
    },
    close(tag) {
      if (tag === 'table') {
        if (--depth === 0) current = '';
      } else if (current !== table) return;
      else if (tag === 'annotation') remark--;
      else if ((tag === 'table-cell' || tag === 'covered-table-cell') && cell) {
        const value = cellText(cell, text);
        const times = Math.min(Number(cell['number-columns-repeated'] ?? 1), MOST_REPEATS + 1);
        for (let i = 0; i < times; i++) row.push(value);
        cell = null;
      } else if (tag === 'table-row') {
        const isBlank = row.every((c) => c === '');
        if (!isBlank && repeatedRows > MOST_REPEATS) grid.refuse();
        const times = isBlank ? 0 : repeatedRows;
        for (let i = 0; i < times; i++) grid.add(at + i, [...row]);
        at += repeatedRows;
      }
    },
  };
  yield* readXml(open('content.xml'), reader, name);
  return grid;
}
