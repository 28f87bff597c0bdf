import { expect, test } from 'vitest';
import { choiceMeant } from '../../src/book/choices.ts';

test.each([
  ['female', 'female'],
  [' Male ', 'male'],
  ['F', 'female'],
  ['m', 'male'],
  ['fe', undefined],
  ['x', undefined],
])('%j among female and male means %s', (text, meant) =>
  expect(choiceMeant(['female', 'male'], text)).toBe(meant),
);

test('a letter that begins two choices means neither of them', () => {
  expect(choiceMeant(['left', 'level'], 'l')).toBeUndefined();
  expect(choiceMeant(['left', 'L'], 'l')).toBe('L');
});
