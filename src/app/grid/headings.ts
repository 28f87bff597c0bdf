/** Draws the headings of columns: label, unit, letter and formula. */
import type { ColumnOutline } from '../../session/api.ts';
import { marksInWords } from '../marks/mark-words.ts';

const piece = (className: string, text: string): HTMLSpanElement => {
  const element = document.createElement('span');
  element.className = className;
  element.textContent = text;
  return element;
};

const line = (className: string, ...pieces: Node[]): HTMLDivElement => {
  const element = document.createElement('div');
  element.className = className;
  element.append(...pieces);
  return element;
};

const letters = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
const sameWords = (a: string, b: string): boolean => letters(a) === letters(b);

/** Takes out what a heading held. */
export function emptyHeading(cell: HTMLElement): void {
  cell.querySelector('.heading')?.remove();
  cell.classList.remove('computed');
}

/**
 * Fills a column's heading: label, unit, address letter; below them the formula of the column, or its name. The library
 * writes headings as markup, so it is given none; these are nodes beside its own, and no label is ever read as markup.
 */
export function fillHeading(cell: HTMLElement, column: ColumnOutline): void {
  const place = cell.firstElementChild;
  if (!place) return;
  const { label, sign, address, formula, name, note, marks } = column;
  const key = JSON.stringify([label, sign, address, formula, name, note, marks]);
  const present = place.querySelector<HTMLElement>('.heading');
  if (present?.dataset.key === key) return;
  cell.classList.toggle('computed', formula !== undefined);
  const box = document.createElement('div');
  box.className = 'heading';
  box.dataset.key = key;
  const top = line('heading-label', piece('heading-words', label));
  if (sign) top.append(' ', piece('heading-unit', sign));
  // The name that formulas use is told where it does not go without saying.
  const below = formula === undefined ? (sameWords(name, label) ? '' : name) : `= ${formula}`;
  box.append(
    top,
    line(
      'heading-below',
      piece(formula === undefined ? 'heading-name' : 'heading-formula', below),
      piece('heading-address', address),
    ),
  );
  box.title = [label, formula && `= ${formula}`, note, ...marksInWords(column)].filter(Boolean).join('\n');
  present?.remove();
  place.append(box);
}
