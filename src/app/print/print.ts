import { decorate } from '../marks/decorate.ts';
import { legendOf } from '../marks/legend.ts';
import type { Page } from '../state/page.ts';
import './print.css';

/** Rows fetched at once for printing. */
const step = 500;
/** More rows than anybody prints; the rest is said to be left out. */
const most = 5000;

/** Prints the sheet on show: a plain table is laid out for the printer, put before it, and taken away afterwards. */
export async function printSheet(page: Page): Promise<void> {
  const sheet = page.sheet.value;
  if (!sheet) return;
  const shown = sheet.columns.flatMap((column, index) => (column.hidden ? [] : [{ column, index }]));
  const box = document.createElement('div');
  box.className = 'print-sheet';
  const title = document.createElement('h1');
  title.textContent = `${page.outline.value?.title ?? ''}: ${sheet.label}`;
  const table = document.createElement('table');
  const head = table.createTHead().insertRow();
  for (const { column } of shown) {
    const th = document.createElement('th');
    th.textContent = column.unit ? `${column.label} (${column.unit})` : column.label;
    head.append(th);
  }
  const body = table.createTBody();
  const rows = Math.min(sheet.rows, most);
  for (let row = 0; row < rows; row += step) {
    const tile = await page.service.tile(sheet.id, row, Math.min(step, rows - row), 0, sheet.columns.length);
    for (let r = 0; r < tile.rows; r++) {
      const line = body.insertRow();
      for (const { column, index } of shown) {
        const cell = line.insertCell();
        cell.textContent = tile.texts[r * tile.columns + index] ?? '';
        if (column.kind === 'number') cell.className = 'numeric';
        const drawing = column.marks && tile.drawings?.find((one) => one.column === index);
        if (drawing) cell.className += decorate(cell, column.marks!, drawing, r);
      }
    }
  }
  box.append(title, table, ...legendOf(shown.map(({ column }) => column)));
  if (rows < sheet.rows) {
    const rest = document.createElement('p');
    rest.textContent = `${sheet.rows - rows} further rows are not printed.`;
    box.append(rest);
  }
  document.body.append(box);
  try {
    globalThis.print();
  } finally {
    box.remove();
  }
}
