import { writeCells } from './file-cells.ts';
import { CURRENT_FORMAT } from './migrations/index.ts';
import { type Book, type Column, partNames, type Sheet } from './model.ts';

/** Cells on a line of the file: a changed cell is one changed line, and line k begins with row 10k + 1. */
const CELLS_A_LINE = 10;

/**
 * The text of a book's file: always the same text for the same book, keys in one order, columns one after another, so
 * that version control shows what changed.
 */
export function writeBook(book: Book): string {
  const out: string[] = [
    `{\n  "leverbook": ${CURRENT_FORMAT},\n  "title": ${JSON.stringify(book.title)},\n  "sheets": [`,
  ];
  book.sheets.forEach((sheet, s) => {
    out.push(s === 0 ? '\n' : ',\n');
    writeSheet(sheet, out);
  });
  out.push(book.sheets.length ? '\n  ]' : ']');
  const names = [...book.names].sort(([a], [b]) => (a < b ? -1 : 1));
  if (names.length) {
    const lines = names.map(([, { sheet, column, row, note, dimension, unit, per, role, name }]) => {
      const home = book.sheets.find((s) => s.id === sheet)!;
      const of = home.columns.find((c) => c.id === column)!;
      return `    ${oneLine({ name, sheet: home.name, column: of.name, row: row + 1, note, dimension, unit, per, role })}`;
    });
    out.push(`,\n  "names": [\n${lines.join(',\n')}\n  ]`);
  }
  const parts = partNames.filter((part) => book.parts[part].size > 0);
  if (parts.length) {
    const lines = parts.map((part) => {
      const records = [...book.parts[part]].sort(([a], [b]) => (a < b ? -1 : 1));
      const inside = records.map(
        ([key, value]) => `      ${JSON.stringify(key)}: ${indented(value, '      ')}`,
      );
      return `    "${part}": {\n${inside.join(',\n')}\n    }`;
    });
    out.push(`,\n  "parts": {\n${lines.join(',\n')}\n  }`);
  }
  out.push('\n}\n');
  return out.join('');
}

function writeSheet(sheet: Sheet, out: string[]): void {
  const { id, name, label, purpose, note, rows } = sheet;
  const head = oneLine({
    id: id === name ? undefined : id,
    name,
    label: label === name ? undefined : label,
    purpose,
    note,
    rows,
  });
  out.push(`    {\n      ${head.slice(2, -2)},\n      "columns": [`);
  sheet.columns.forEach((column, c) => {
    const cells = writeCells(sheet.cells.get(column.id)!, column.kind);
    out.push(c === 0 ? '\n' : ',\n', `        ${writeColumn(column, cells)}`);
  });
  out.push(sheet.columns.length ? '\n      ]\n    }' : ']\n    }');
}

function writeColumn(column: Column, cells: readonly string[]): string {
  const { id, name, label, kind, dimension, unit, per, choices, formula, note, width, format, hidden, role } =
    column;
  const head = oneLine({
    id: id === name ? undefined : id,
    name,
    label: label === name ? undefined : label,
    kind,
    dimension,
    per,
    unit,
    choices,
    formula,
    note,
    width,
    format,
    hidden,
    role,
  });
  if (cells.length === 0) return head;
  const lines: string[] = [];
  for (let i = 0; i < cells.length; i += CELLS_A_LINE)
    lines.push(cells.slice(i, i + CELLS_A_LINE).join(', '));
  return `${head.slice(0, -2)},\n          "cells": [\n            ${lines.join(',\n            ')}\n          ] }`;
}

/** A small record on one line, without what is undefined. */
function oneLine(record: Readonly<Record<string, unknown>>): string {
  const entries = Object.entries(record).filter(([, value]) => value !== undefined);
  return `{ ${entries.map(([key, value]) => `"${key}": ${spaced(value)}`).join(', ')} }`;
}

/** JSON on one line with a blank after each comma and colon, as the rest of the file has it. */
function spaced(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(spaced).join(', ')}]`;
  if (typeof value === 'object' && value !== null) return oneLine(value as Record<string, unknown>);
  return JSON.stringify(value);
}

const indented = (value: unknown, indent: string): string =>
  JSON.stringify(value, null, 2).replaceAll('\n', `\n${indent}`);
