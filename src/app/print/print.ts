import * as say from '../../../functions/tables/sources.ts';
import { writeMoment } from '../../units/date.ts';
import { decorate } from '../marks/decorate.ts';
import { marksInWords } from '../marks/mark-words.ts';
import { functionHelp, loadFunctions } from '../state/functions.ts';
import type { Page } from '../state/page.ts';
import { layOut, letters } from './lay-out.ts';
import { type Printed, printedLines } from './lines.ts';
import './print.css';

/**
 * Prints the sheet on show: tables laid out for the printer stand beside the page, which is not printed, until that is
 * over. Headings come again on each page; where the columns need more than a page's width, the first comes again too.
 */
export async function printSheet(page: Page): Promise<void> {
  const shown = page.shown.value;
  const outline = page.outline.value;
  if (!shown || !outline) return;
  page.busy.value = 'Laying out pages';
  try {
    await loadFunctions(page);
    const printed = await printedLines(page, shown);
    const { sheet } = shown;
    const box = element('div', 'print-sheet');
    document.querySelector('.print-sheet')?.remove();
    document.body.append(box);
    const { wide, size, parts } = layOut(widthsOf(box, printed), shown.frozen);
    box.classList.toggle('wide', wide);
    box.style.fontSize = `${size}pt`;
    const filtered = shown.lines.listed < sheet.rows;
    const rows = filtered ? `${shown.lines.listed} of ${sheet.rows} rows` : '';
    parts.forEach((columns, part) => {
      const of = parts.length === 1 ? '' : `part ${part + 1} of ${parts.length}`;
      const title = titleOf(`${outline.title}: ${sheet.label}`, [rows, of, today()]);
      box.append(tableOf(printed, columns, title));
    });
    box.append(notesOf(page, printed, sheet.note));
  } finally {
    page.busy.value = null;
  }
  // The name that a PDF gets.
  const before = document.title;
  document.title = `${outline.title} - ${shown.sheet.label}`;
  const over = () => {
    document.querySelector('.print-sheet')?.remove();
    document.title = before;
  };
  // Some browsers go on while the pages are being looked at.
  globalThis.addEventListener('afterprint', over, { once: true });
  globalThis.print();
}

function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  className = '',
  text = '',
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  if (className) made.className = className;
  if (text) made.textContent = text;
  return made;
}

const today = (): string => writeMoment(new Date());

function titleOf(words: string, beside: readonly string[]): HTMLElement {
  const title = element('div', 'print-title');
  title.append(
    element('strong', '', words),
    element('span', '', beside.filter((text) => text !== '').join(' · ')),
  );
  return title;
}

/** A table of some columns. Its head, which comes again on each page, holds the title too. */
function tableOf(printed: Printed, columns: readonly number[], title?: HTMLElement): HTMLTableElement {
  const table = element('table');
  const head = table.createTHead();
  if (title) {
    const cell = element('th', 'print-title-cell');
    cell.colSpan = columns.length;
    cell.append(title);
    head.insertRow().append(cell);
  }
  const labels = head.insertRow();
  for (const index of columns) {
    const { label, name, sign, kind } = printed.columns[index]!;
    const th = element('th', kind === 'number' || kind === 'date' ? 'numeric' : '', label || name);
    if (sign) th.append(' ', element('span', 'print-unit', sign));
    labels.append(th);
  }
  const body = table.createTBody();
  for (const { cells, summary } of printed.lines) {
    const row = body.insertRow();
    if (summary) row.className = 'summary';
    for (const index of columns) {
      const { text, numeric, held, drawn } = cells[index]!;
      const cell = row.insertCell();
      cell.textContent = held ? `${text} †` : text;
      if (numeric) cell.className = 'numeric';
      const { marks } = printed.columns[index]!;
      if (drawn && marks) cell.className += decorate(cell, marks, drawn.drawing, drawn.at);
    }
  }
  return table;
}

/** Lines that are enough to know how wide a column is. */
const sample = 300;

/** Width of each column at the wanted size of letters, mm: as wide as its longest words, texts in lines of at most 70 mm. */
function widthsOf(box: HTMLElement, printed: Printed): readonly number[] {
  const columns = printed.columns.map((_, index) => index);
  const table = tableOf({ ...printed, lines: longest(printed, columns) }, columns);
  box.classList.add('measured');
  box.style.fontSize = `${letters.wanted}pt`;
  box.append(table);
  const widths = [...table.tHead!.rows[0]!.cells].map((cell) => (cell.offsetWidth * 25.4) / 96);
  table.remove();
  box.classList.remove('measured');
  return widths;
}

/** For each column its longest texts, put together in lines. */
function longest({ lines }: Printed, columns: readonly number[]): Printed['lines'] {
  const some = lines.length <= sample ? lines : [];
  if (some.length > 0) return some;
  const cells = columns.map((index) =>
    lines.reduce(
      (long, line) => (line.cells[index]!.text.length > long.text.length ? line.cells[index]! : long),
      lines[0]!.cells[index]!,
    ),
  );
  return [{ summary: false, cells }];
}

/** What there is to know about the columns, once, after the rows. */
function notesOf({ outline }: Page, printed: Printed, note: string | undefined): HTMLElement {
  const box = element('section', 'print-notes');
  const line = (text: string, name = ''): void => {
    const p = element('p');
    if (name) p.append(element('strong', '', `${name}: `));
    p.append(text);
    box.append(p);
  };
  if (printed.beyond > 0) line(`${printed.beyond.toLocaleString('en')} further rows are not printed.`);
  if (note) line(note);
  for (const column of printed.columns) {
    const words = [column.formula && `= ${column.formula}`, column.note, ...marksInWords(column)];
    const text = words.filter((one) => one).join('. ');
    if (text) line(text, column.label || column.name);
  }
  if (printed.held) line('† unreadable: text where a number or a date belongs.');
  const own = new Set(functionHelp.value.map(({ name }) => name));
  const modelled = printed.columns.some(({ formula }) =>
    formula?.match(/[A-Z][A-Z.]*(?=\()/gi)?.some((name) => own.has(name.toUpperCase())),
  );
  if (modelled) line(`${say.modelCaution} ${say.painCaution} ${say.loadCaution}`);
  if (outline.value) line('Made with Leverbook.');
  return box;
}
