/** A text that is being written, and where in it: from the fixed end of what is chosen to the one that moves. */
export interface Written {
  readonly text: string;
  readonly anchor: number;
  readonly head: number;
}

/** Something done to a text before it was there. */
export type Stroke =
  | { readonly is: 'text'; readonly text: string }
  | { readonly is: 'key'; readonly key: string; readonly shift: boolean; readonly word: boolean };

/** What a key does to a text; null for a key that is not about the text. */
export function strokeOf(event: KeyboardEvent): Stroke | null {
  const { key, shiftKey: shift } = event;
  const word = event.ctrlKey || event.metaKey;
  if (event.altKey || event.isComposing) return null;
  if (key.length === 1) return word ? choosesAll(key) : { is: 'text', text: key };
  return key in moves || key in cuts ? { is: 'key', key, shift, word } : null;
}

const choosesAll = (key: string): Stroke | null =>
  key.toLowerCase() === 'a' ? { is: 'key', key: 'all', shift: false, word: false } : null;

/** Does to the text what was done before it was there, one after the other. */
export function strike(written: Written, strokes: readonly Stroke[]): Written {
  return strokes.reduce(
    (at, stroke) => (stroke.is === 'text' ? over(at, stroke.text) : press(at, stroke)),
    written,
  );
}

function press(at: Written, { key, shift, word }: Extract<Stroke, { is: 'key' }>): Written {
  const { text, anchor, head } = at;
  if (key === 'all') return { text, anchor: 0, head: text.length };
  const cut = cuts[key];
  if (cut) return over(anchor === head ? { text, anchor, head: cut(text, head, word) } : at, '');
  const move = moves[key]!;
  // Without Shift an arrow over a chosen part goes to its end.
  const to =
    anchor !== head && !shift && key.startsWith('Arrow')
      ? (key === 'ArrowLeft' ? Math.min : Math.max)(anchor, head)
      : move(text, head, word);
  return { text, anchor: shift ? anchor : to, head: to };
}

type Move = (text: string, at: number, word: boolean) => number;

const back: Move = (text, at, word) => (word ? wordStart(text, at) : before(text, at));
const on: Move = (text, at, word) => (word ? wordEnd(text, at) : after(text, at));

const moves: Readonly<Record<string, Move>> = {
  ArrowLeft: back,
  ArrowRight: on,
  Home: () => 0,
  End: (text) => text.length,
};
const cuts: Readonly<Record<string, Move>> = { Backspace: back, Delete: on };

function over({ text, anchor, head }: Written, typed: string): Written {
  const [from, to] = [Math.min(anchor, head), Math.max(anchor, head)];
  const at = from + typed.length;
  return { text: text.slice(0, from) + typed + text.slice(to), anchor: at, head: at };
}

/** A letter beyond the first 65,536 is two units long, and goes as one. */
const before = (text: string, at: number): number => at - ([...text.slice(0, at)].at(-1)?.length ?? 0);
const after = (text: string, at: number): number => at + ([...text.slice(at)][0]?.length ?? 0);
const wordStart = (text: string, at: number): number => at - /\S*\s*$/.exec(text.slice(0, at))![0].length;
const wordEnd = (text: string, at: number): number => at + /^\s*\S*/.exec(text.slice(at))![0].length;
