import { isoFromSerial, serialFromIso } from '../units/date.ts';
import { CellKind, Cells, type Held } from './cells.ts';
import { limits } from './file-frame.ts';
import type { ColumnKind } from './model.ts';

/** Says where in a column something is wrong, and what. */
export type Complain = (index: number, problem: string) => never;

/**
 * A column's cells from their JSON. Numbers, texts, yes/no and null stand for themselves; in a date column a text is an
 * ISO 8601 date; everything else is an object: {"date"}, {"text"} (a text in a date column), {"formula"}, {"held",
 * "reason"}. A text that begins with "=" is a text.
 */
export function readCells(
  raw: readonly unknown[],
  rows: number,
  kind: ColumnKind,
  complain: Complain,
): Cells {
  const length = raw.length;
  const kinds = new Uint8Array(rows);
  const numbers = new Float64Array(rows);
  const dates = kind === 'date';
  let texts: (string | undefined)[] | null = null;
  let formulas: Map<number, string> | undefined;
  let held: Map<number, Held> | undefined;
  const putText = (i: number, text: string): void => {
    if (text.length > limits.text)
      complain(i, `a text of ${text.length} characters; at most ${limits.text} are accepted`);
    kinds[i] = CellKind.text;
    texts ??= new Array<string | undefined>(rows);
    texts[i] = text;
  };
  const putDate = (i: number, serial: number | undefined, shown: string): void => {
    if (serial === undefined)
      complain(i, `"${shown.slice(0, 40)}", which is not a date; dates look like "2025-03-01"`);
    kinds[i] = CellKind.date;
    numbers[i] = serial;
  };
  const putObject = (i: number, cell: Record<string, unknown>): void => {
    const keys = Object.keys(cell);
    const { date, text, formula, reason } = cell;
    if (keys.length === 1 && typeof date === 'string') putDate(i, serialFromIso(date), date);
    else if (keys.length === 1 && typeof date === 'number' && Number.isFinite(date)) putDate(i, date, '');
    else if (keys.length === 1 && typeof text === 'string') putText(i, text);
    else if (keys.length === 1 && typeof formula === 'string' && formula.length <= limits.formula) {
      kinds[i] = CellKind.formula;
      formulas ??= new Map();
      formulas.set(i, formula);
    } else if (keys.length === 2 && isText(cell.held) && isText(reason)) {
      kinds[i] = CellKind.held;
      held ??= new Map();
      held.set(i, { held: cell.held, reason });
    } else
      complain(
        i,
        `an object with ${keys.slice(0, 4).join(', ') || 'nothing'}; accepted are date, text, formula, or held with reason`,
      );
  };
  for (let i = 0; i < length; i++) {
    const cell = raw[i];
    if (typeof cell === 'number') {
      if (!Number.isFinite(cell)) complain(i, 'a number too large to be saved');
      kinds[i] = CellKind.number;
      numbers[i] = cell + 0;
    } else if (cell === null) continue;
    else if (typeof cell === 'string') {
      if (dates) putDate(i, serialFromIso(cell), cell);
      else putText(i, cell);
    } else if (typeof cell === 'boolean') {
      kinds[i] = CellKind.yesNo;
      numbers[i] = cell ? 1 : 0;
    } else if (typeof cell === 'object' && !Array.isArray(cell))
      putObject(i, cell as Record<string, unknown>);
    else complain(i, 'a list where one cell is expected');
  }
  return Cells.from(
    { length: rows, kinds, numbers, texts, formulas: formulas ?? new Map(), held: held ?? new Map() },
    rows,
  );
}

const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= limits.text;

/** The JSON of each cell down to the last that holds something. */
export function writeCells(cells: Cells, kind: ColumnKind): string[] {
  let end = cells.length;
  while (end > 0 && cells.kinds[end - 1] === CellKind.blank) end--;
  const out = new Array<string>(end);
  for (let i = 0; i < end; i++) out[i] = cellText(cells, i, kind === 'date');
  return out;
}

function cellText(cells: Cells, row: number, dates: boolean): string {
  switch (cells.kinds[row]) {
    case CellKind.number:
      return String(cells.numbers[row]);
    case CellKind.yesNo:
      return cells.numbers[row] === 0 ? 'false' : 'true';
    case CellKind.date:
      return dateText(cells.numbers[row]!, dates);
    case CellKind.text: {
      const text = JSON.stringify(cells.texts?.[row] ?? '');
      return dates ? `{ "text": ${text} }` : text;
    }
    case CellKind.formula:
      return `{ "formula": ${JSON.stringify(cells.formulas.get(row) ?? '')} }`;
    case CellKind.held: {
      const { held, reason } = cells.held.get(row)!;
      return `{ "held": ${JSON.stringify(held)}, "reason": ${JSON.stringify(reason)} }`;
    }
    default:
      return 'null';
  }
}

/** As ISO text where that reads back to the same moment, else as the serial itself. */
function dateText(serial: number, plain: boolean): string {
  const iso = isoFromSerial(serial);
  if (iso === undefined || serialFromIso(iso) !== serial) return `{ "date": ${serial} }`;
  return plain ? `"${iso}"` : `{ "date": "${iso}" }`;
}
