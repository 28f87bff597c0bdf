import { isEdit } from '../book/edit-shape.ts';
import { type Beyond, DEEPEST, noPast, type Past, type Step } from '../book/history.ts';
import { decode, encode } from './codec.ts';

/*
 * What can be undone and redone, as a snapshot carries it. Every step is a run of bytes of its own: one that cannot be read
 * ends undo there and costs neither the later steps nor the book.
 */

/** Bytes of steps that a snapshot takes along. The nearest go first, undo before redo. */
export const LARGEST_PAST = 64 * 1024 * 1024;

interface Packed {
  readonly words: string;
  readonly edit: Uint8Array;
}

/** The nearest steps as bytes, as far as there is room, and the words of the first for which there is none. */
function packed(steps: readonly Step[], room: number) {
  const taken: Packed[] = [];
  for (const { words, edit } of steps.toReversed()) {
    const bytes = encode(edit);
    if (bytes.length > room) return { taken: taken.reverse(), room: 0, missed: words };
    room -= bytes.length;
    taken.push({ words, edit: bytes });
  }
  return { taken: taken.reverse(), room };
}

export function pastBytes({ undo, redo, beyond }: Past, largest = LARGEST_PAST): Uint8Array<ArrayBuffer> {
  const back = packed(undo, largest);
  const forth = packed(redo, back.room);
  const end: Beyond | undefined = back.missed === undefined ? beyond : { words: back.missed, why: 'large' };
  return encode({ undo: back.taken, redo: forth.taken, beyond: end });
}

/** Reads what `pastBytes` wrote; a snapshot without any has nothing to undo. Never throws. */
export function readPast(bytes: unknown): Past {
  if (bytes === undefined) return noPast;
  try {
    const { undo, redo, beyond } = decode(bytes as Uint8Array) as Record<keyof Past, unknown>;
    const back = unpacked(undo);
    const end: Beyond | undefined = back.bad ?? (isBeyond(beyond) ? beyond : undefined);
    return { undo: back.steps, redo: unpacked(redo).steps, ...(end ? { beyond: end } : {}) };
  } catch {
    return { ...noPast, beyond: { words: '', why: 'unreadable' } };
  }
}

function unpacked(list: unknown): { readonly steps: readonly Step[]; readonly bad?: Beyond } {
  const steps: Step[] = [];
  for (const one of (list as readonly Partial<Packed>[]).slice(-DEEPEST).reverse()) {
    const words = typeof one?.words === 'string' ? one.words : '';
    const edit = editIn(one?.edit);
    if (!edit) return { steps: steps.reverse(), bad: { words, why: 'unreadable' } };
    steps.push({ words, edit });
  }
  return { steps: steps.reverse() };
}

function editIn(bytes: unknown) {
  try {
    // A copy: its windows would hold on to the whole snapshot.
    const edit = decode((bytes as Uint8Array).slice());
    return isEdit(edit) ? edit : undefined;
  } catch {
    return undefined;
  }
}

const isBeyond = (value: unknown): value is Beyond => {
  const { words, why } = (value ?? {}) as Partial<Beyond>;
  return typeof words === 'string' && ['many', 'large', 'unreadable'].includes(why as string);
};
