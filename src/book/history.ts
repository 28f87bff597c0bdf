import type { Edit } from './edit.ts';
import { editSize } from './size.ts';

/** What can be undone and redone in an open book, and how far back: sentences say where undo ends, and why. */

/** A command that was done: its words, and the edit that takes it back or does it again. */
export interface Step {
  readonly words: string;
  readonly edit: Edit;
}

/** The change before the oldest that can be undone, and why that one cannot. */
export interface Beyond {
  readonly words: string;
  readonly why: 'many' | 'large' | 'unreadable';
}

/** A history as it is stored: the next step of either side is its last. */
export interface Past {
  readonly undo: readonly Step[];
  readonly redo: readonly Step[];
  readonly beyond?: Beyond;
}

export const noPast: Past = { undo: [], redo: [] };

/** Steps and bytes that are kept for undo; the oldest go when there is more. The last step always stays. */
export const DEEPEST = 1_000;
const LARGEST = 256 * 1024 * 1024;

/** What can be undone and redone. Something new done after an undo makes the undone unreachable. */
export class History {
  private readonly done: Step[];
  private undone: Step[];
  private beyond: Beyond | undefined;
  private bytes: number;

  constructor({ undo, redo, beyond }: Past = noPast) {
    this.done = [...undo];
    this.undone = [...redo];
    this.beyond = beyond;
    this.bytes = [...undo, ...redo].reduce((sum, { edit }) => sum + editSize(edit), 0);
  }

  get undo(): string | null {
    return this.done.at(-1)?.words ?? null;
  }
  get redo(): string | null {
    return this.undone.at(-1)?.words ?? null;
  }

  /** As it is now; what happens later does not change it. */
  get past(): Past {
    const { beyond } = this;
    return { undo: [...this.done], redo: [...this.undone], ...(beyond ? { beyond } : {}) };
  }

  /** Where undo ends and why, where something was done before that cannot be undone any more. */
  get end(): string | undefined {
    const { beyond, done } = this;
    if (!beyond) return undefined;
    const before = beyond.words === '' ? '' : `, “${beyond.words}”,`;
    const why = {
      many: `only the last ${DEEPEST.toLocaleString('en')} changes can be undone.`,
      large: `the change before${done[0] ? ' it' : ''}${before} was too large to save.`,
      unreadable: `the saved change before${done[0] ? ' it' : ''}${before} is unreadable.`,
    }[beyond.why];
    return `${done[0] ? `Undo reaches back to “${done[0].words}”` : 'Undo ends here'}: ${why}`;
  }

  /** Notes what was done, with the edit that takes it back. */
  note(words: string, inverse: Edit): void {
    for (const { edit } of this.undone) this.bytes -= editSize(edit);
    this.undone = [];
    this.done.push({ words, edit: inverse });
    this.bytes += editSize(inverse);
    while (this.done.length > 1 && (this.done.length > DEEPEST || this.bytes > LARGEST)) {
      const why = this.bytes > LARGEST ? 'large' : 'many';
      const { words, edit } = this.done.shift()!;
      this.beyond = { words, why };
      this.bytes -= editSize(edit);
    }
  }

  /** Takes the last step off one side and puts its opposite on the other; `apply` answers the inverse edit. */
  step(direction: 'undo' | 'redo', apply: (edit: Edit) => Edit): Step | undefined {
    const [from, to] = direction === 'undo' ? [this.done, this.undone] : [this.undone, this.done];
    const entry = from.at(-1);
    if (!entry) return undefined;
    const inverse = apply(entry.edit);
    from.pop();
    to.push({ words: entry.words, edit: inverse });
    this.bytes += editSize(inverse) - editSize(entry.edit);
    return entry;
  }

  /** Notes a step that was done again while a book was rebuilt, so that it can be taken back as before. */
  replay(kind: 'command' | 'undo' | 'redo', words: string, inverse: Edit): void {
    if (kind === 'command') {
      this.note(words, inverse);
      return;
    }
    const [from, to] = kind === 'undo' ? [this.done, this.undone] : [this.undone, this.done];
    const entry = from.pop();
    to.push({ words, edit: inverse });
    this.bytes += editSize(inverse) - (entry ? editSize(entry.edit) : 0);
  }
}
