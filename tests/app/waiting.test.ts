import { expect, test } from 'vitest';
import { type Stroke, strike } from '../../src/app/grid/waiting.ts';

/** Keys that were pressed before the text of a cell was there do to it what they would have done in its field. */

const key = (name: string, held: { shift?: true; word?: true } = {}): Stroke => ({
  is: 'key',
  key: name,
  shift: held.shift ?? false,
  word: held.word ?? false,
});
const typed = (text: string): Stroke => ({ is: 'text', text });

/** What becomes of a text with the caret at its end; "|" stands for the caret, and once more for the end of what is chosen. */
function after(text: string, ...strokes: readonly Stroke[]): string {
  const { text: now, anchor, head } = strike({ text, anchor: text.length, head: text.length }, strokes);
  const [from, to] = [Math.min(anchor, head), Math.max(anchor, head)];
  return from === to
    ? `${now.slice(0, from)}|${now.slice(from)}`
    : `${now.slice(0, from)}|${now.slice(from, to)}|${now.slice(to)}`;
}

test('what is typed stands where the caret is', () => {
  expect(after('42.5', typed('1'), typed('2'))).toBe('42.512|');
  expect(after('42.5', key('Home'), typed('1'))).toBe('1|42.5');
  expect(after('42.5', key('ArrowLeft'), key('ArrowLeft'), typed('0'))).toBe('420|.5');
  expect(after('42.5', key('Home'), key('ArrowRight'), key('End'), typed('x'))).toBe('42.5x|');
});

test('Backspace and Delete take a letter, a word, or what is chosen; at an end there is nothing to take', () => {
  expect(after('42.5', key('Backspace'), typed('0'))).toBe('42.0|');
  expect(after('42.5', key('Delete'))).toBe('42.5|');
  expect(after('about 44', key('Home'), key('Delete'), key('Delete'))).toBe('|out 44');
  expect(after('about 44', key('Home'), key('Backspace'))).toBe('|about 44');
  expect(after('about 44', key('Backspace', { word: true }))).toBe('about |');
  expect(after('about 44', key('Home'), key('Delete', { word: true }))).toBe('| 44');
  expect(after('about 44', key('all'), key('Delete'), typed('4'))).toBe('4|');
  expect(after('a👍', key('Backspace'))).toBe('a|');
});

test('with Shift the caret chooses, and what is typed takes the place of what is chosen', () => {
  expect(after('42.5', key('ArrowLeft', { shift: true }))).toBe('42.|5|');
  expect(after('42.5', key('Home', { shift: true }), typed('7'))).toBe('7|');
  expect(after('42.5', key('ArrowLeft', { shift: true, word: true }), key('ArrowLeft'))).toBe('|42.5');
  expect(after('42.5', key('all'), key('ArrowRight'))).toBe('42.5|');
});
