import { isBehind } from './front.ts';
import type { Page } from './page.ts';

/** Gives the keys to what is in the centre of the page: the chart on show, else the sheet. What is in front of it has them. */
export function focusCentre({ chart, grid }: Page): void {
  if (isBehind()) return;
  if (chart.peek() === null) grid.current?.focus();
  else document.querySelector<HTMLElement>('.chart-place')?.focus();
}
