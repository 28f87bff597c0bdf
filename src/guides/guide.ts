/** Where a step's button leads on the page. */
export type Show =
  /** Opens the template of that name. */
  | { readonly template: string }
  /** Looks at a file of the guide, as if it had been chosen from the disk, with this sheet in front. */
  | { readonly file: string; readonly into: string }
  /** Goes to a sheet, a column, a cell (row from 1). */
  | { readonly sheet: string; readonly column?: string; readonly row?: number }
  | { readonly chart: string }
  | { readonly name: string }
  | { readonly side: 'figure' | 'working' | 'guide' | 'doubts' | 'picture' }
  | { readonly command: string };

export interface Step {
  /** The browser test does the step of this id. */
  readonly id: string;
  /** What to do: *pressed or read on the screen*, `typed`. */
  readonly text: string;
  /** What to see then, or why. */
  readonly sees?: string;
  /** Lines to write in a terminal. */
  readonly lines?: readonly string[];
  readonly show?: Show;
  /** The picture `guide-GUIDE-STEP.png` shows the page after the step; this describes it. */
  readonly picture?: string;
}

export interface Part {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** A way from nothing to a result: for the app and for `docs/`. */
export interface Guide {
  readonly id: string;
  /** "For the coach" */
  readonly title: string;
  /** What one has in the end. */
  readonly lead: string;
  /** Name of the template it begins with and of the sample that it leads to. */
  readonly book: string;
  /** Files that it brings in, with what they hold. */
  readonly files: Readonly<Record<string, string>>;
  readonly parts: readonly Part[];
  readonly cautions: readonly string[];
}

export const stepsOf = (guide: Guide): readonly Step[] => guide.parts.flatMap(({ steps }) => steps);

export const pictureName = (guide: Guide, step: Step): string => `guide-${guide.id}-${step.id}.png`;

/** A piece of a step's text: plain, pressed or read on the screen, or typed. */
export interface Piece {
  readonly as: 'plain' | 'press' | 'type';
  readonly text: string;
}

export function piecesOf(text: string): readonly Piece[] {
  return text
    .split(/(\*[^*]+\*|`[^`]+`)/)
    .filter((piece) => piece !== '')
    .map((piece) => {
      const as = piece.startsWith('*') ? 'press' : piece.startsWith('`') ? 'type' : 'plain';
      return { as, text: as === 'plain' ? piece : piece.slice(1, -1) };
    });
}
