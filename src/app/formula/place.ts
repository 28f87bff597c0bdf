/** Where the formula editor lies over its cell. */
interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Pixels kept free to the edge of the sheet. */
const margin = 8;
/** A formula has at least this width where the sheet has it, however narrow its column; and no more than the other. */
const widths = { least: 220, most: 640 };
/** Height of the headings: what is written never lies over them. */
const headings = 64;
/** Room that what is said under the editor asks for. */
const below = 120;

/**
 * Puts the editor over its cell: it grows to the right and then down with its text, and stays inside the sheet. A cell that
 * has been scrolled away leaves it at the edge.
 */
export function boxIn(element: HTMLElement, room: Box, cell: DOMRect | null): void {
  const { style } = element;
  const right = room.right - margin;
  const bottom = room.bottom - margin;
  if (cell) {
    const wanted = Math.min(Math.max(cell.width + 2, widths.least), right - room.left);
    const left = within(cell.left - 1, room.left, right - wanted);
    style.left = `${left}px`;
    style.minWidth = `${wanted}px`;
    style.maxWidth = `${Math.min(Math.max(widths.most, wanted), right - left)}px`;
    style.setProperty('--cell-height', `${cell.height}px`);
  }
  const { height } = element.firstElementChild!.getBoundingClientRect();
  const at = cell ? cell.top - 1 : Number.parseFloat(style.top) || room.top;
  const top = within(at, room.top + headings, bottom - height);
  style.top = `${top}px`;
  element.dataset.low = String(top + height + below > window.innerHeight);
}

/**
 * What is said under the editor steps out of the way of what is pointed at: to above the editor, and back. Answers whether
 * it did.
 */
export function stepAside(element: HTMLElement, spots: readonly Box[]): boolean {
  const said = element.querySelector('.formula-below')?.getBoundingClientRect();
  if (!said || !spots.some((spot) => overlap(said, spot))) return false;
  element.dataset.aside = String(element.dataset.aside !== 'true');
  return true;
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));
