import type { Edit } from '../book/edit.ts';
import { editSize } from '../book/size.ts';

/** A command that was done: its words, and the edit that takes it back or does it again. */
export interface Entry {
  readonly words: string;
  readonly edit: Edit;
}

/** Steps and bytes that are kept for undo; the oldest go when there is more. The last step always stays. */
const DEEPEST = 1_000;
const LARGEST = 256 * 1024 * 1024;

/** What can be undone and redone. Something new done after an undo makes the undone unreachable. */
export class History {
  private done: Entry[] = [];
  private undone: Entry[] = [];
  private bytes = 0;

  get undo(): string | null {
    return this.done.at(-1)?.words ?? null;
  }
  get redo(): string | null {
    return this.undone.at(-1)?.words ?? null;
  }

  /** Notes what was done, with the edit that takes it back. */
  note(words: string, inverse: Edit): void {
    for (const { edit } of this.undone) this.bytes -= editSize(edit);
    this.undone = [];
    this.done.push({ words, edit: inverse });
    this.bytes += editSize(inverse);
    while (this.done.length > 1 && (this.done.length > DEEPEST || this.bytes > LARGEST))
      this.bytes -= editSize(this.done.shift()!.edit);
  }

  /** Takes the last step off one side and puts its opposite on the other; `apply` answers the inverse edit. */
  step(direction: 'undo' | 'redo', apply: (edit: Edit) => Edit): Entry | undefined {
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
