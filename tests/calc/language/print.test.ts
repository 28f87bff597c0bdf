import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Node } from '../../../src/calc/ast.ts';
import { parse } from '../../../src/calc/language/parse.ts';
import { print } from '../../../src/calc/language/print.ts';
import { formulaText } from './formulas.ts';

const bare = (node: Node): unknown =>
  JSON.parse(
    JSON.stringify(node, (key, value) => (key === 'span' || key === 'nameSpan' ? undefined : value)),
  );
const read = (text: string): Node => {
  const parsed = parse(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.issue.reason}`);
  return parsed.node;
};

test('reading what was printed gives the same tree', () => {
  fc.assert(
    fc.property(formulaText, (text) => {
      const node = read(text);
      expect(bare(read(print(node)))).toEqual(bare(node));
    }),
    { numRuns: 2000 },
  );
});

test('printing again gives the same text', () => {
  fc.assert(
    fc.property(formulaText, (text) => {
      const once = print(read(text));
      expect(print(read(once))).toBe(once);
    }),
    { numRuns: 500 },
  );
});

test.each([
  ['(1+2)*3', '(1+2)*3'],
  ['((1))+(2*3)', '1+2*3'],
  ['1-(2-3)', '1-(2-3)'],
  ['(2^3)^2', '2^3^2'],
  ['2^(3^2)', '2^(3^2)'],
  ['-(2^2)', '-(2^2)'],
  ['sum( 1 ,2 )', 'SUM(1, 2)'],
  ['(50%)%', '50%%'],
  ['-(5%)', '-(5%)'],
])('%s is printed as %s', (text, printed) => expect(print(read(text))).toBe(printed));
