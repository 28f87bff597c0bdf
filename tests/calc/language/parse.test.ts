import { describe, expect, test } from 'vitest';
import type { Node } from '../../../src/calc/ast.ts';
import { parse } from '../../../src/calc/language/parse.ts';
import { sentenceOf } from '../../../src/calc/sentences.ts';

/*
 * What the standard says is checked against OpenFormula (ISO/IEC 26300-2:2015, the same text as OASIS ODF 1.3 part 4).
 * Sections are named as remembered, not looked up: 5.3 numbers, 5.4 texts, 5.5 operators, 5.6 functions and skipped
 * parameters, 5.8 references, 5.12 errors, 5.13 inline arrays.
 */

/** The tree in a bare bracket notation of the test's own, so that grouping shows. */
function shape(node: Node): string {
  switch (node.type) {
    case 'number':
      return String(node.value);
    case 'text':
      return JSON.stringify(node.value);
    case 'yes-no':
      return String(node.value);
    case 'error':
      return `${node.code}${node.lost ? `<${node.lost}>` : ''}`;
    case 'empty':
      return '_';
    case 'array':
      return `{${node.rows.map((row) => row.map(shape).join(' ')).join(' | ')}}`;
    case 'unary':
      return `[${node.operator} ${shape(node.operand)}]`;
    case 'percent':
      return `[${shape(node.operand)} %]`;
    case 'binary':
      return `[${shape(node.left)} ${node.operator} ${shape(node.right)}]`;
    case 'call':
      return `${node.name}(${node.args.map(shape).join(' ')})`;
    case 'name':
      return node.name;
    case 'qualified':
      return `${node.sheet}.${node.name}`;
    case 'cell':
      return `${node.sheet ? `${node.sheet}!` : ''}${at(node.at)}`;
    case 'cells':
      return `${node.sheet ? `${node.sheet}!` : ''}${at(node.from)}..${at(node.to)}`;
  }
}
const at = (a: { column: number; row: number; columnFixed: boolean; rowFixed: boolean }): string =>
  `c${a.column}${a.columnFixed ? '$' : ''}r${a.row}${a.rowFixed ? '$' : ''}`;

function check(formula: string, expected: string): void {
  const parsed = parse(formula);
  expect(parsed.ok ? shape(parsed.node) : parsed.issue).toBe(expected);
}

describe('operators group as OpenFormula 5.5 says', () => {
  test.each([
    ['-2^2', '[[- 2] ^ 2]', 'a sign holds tighter than a power'],
    ['2^-1', '[2 ^ [- 1]]', 'a power may have a sign'],
    ['2^3^2', '[[2 ^ 3] ^ 2]', 'powers group from the left'],
    ['-50%', '[[- 50] %]', 'a sign holds tighter than per cent'],
    ['2^50%', '[2 ^ [50 %]]', 'per cent holds tighter than a power'],
    ['50%%', '[[50 %] %]', 'per cent can be repeated'],
    ['2*3^2', '[2 * [3 ^ 2]]', 'a power holds tighter than a product'],
    ['1+2*3', '[1 + [2 * 3]]', 'a product holds tighter than a sum'],
    ['1-2-3', '[[1 - 2] - 3]', 'differences group from the left'],
    ['8/4/2', '[[8 / 4] / 2]', 'quotients group from the left'],
    ['1&2+3', '[1 & [2 + 3]]', 'a sum holds tighter than joining texts'],
    ['1&2=3&4', '[[1 & 2] = [3 & 4]]', 'joining holds tighter than comparing'],
    ['1<2=TRUE', '[[1 < 2] = true]', 'comparisons group from the left'],
    ['(1+2)*3', '[[1 + 2] * 3]', 'parentheses come first'],
    ['--3', '[- [- 3]]', 'signs can be repeated'],
    ['1--1', '[1 - [- 1]]', 'a sign may follow an operator'],
    ['1<>2', '[1 <> 2]', 'not equal'],
    ['1<=2', '[1 <= 2]', 'at most'],
    ['1>=2', '[1 >= 2]', 'at least'],
  ])('%s is %s: %s', (formula, expected) => check(formula, expected));
});

describe('numbers, texts, errors and arrays are written as OpenFormula 5.3, 5.4, 5.12 and 5.13 say', () => {
  test.each([
    ['3.25', '3.25', 'a number'],
    ['.5', '0.5', 'a number without digits before the point'],
    ['5.', '5', 'a number without digits after the point'],
    ['1e3', '1000', 'an exponent'],
    ['2.5E-3', '0.0025', 'an exponent with a sign'],
    ['"a ""b"" c"', '"a \\"b\\" c"', 'a doubled quote in a text'],
    ['""', '""', 'an empty text'],
    ['TRUE', 'true', 'yes'],
    ['false', 'false', 'no, in any case'],
    ['#N/A', '#N/A', 'an error value'],
    ['#div/0!', '#DIV/0!', 'an error value in any case'],
    ['{1,2;3,4}', '{1 2 | 3 4}', 'an array: columns, then rows'],
    ['{-1,"a",TRUE,#N/A}', '{[- 1] "a" true #N/A}', 'an array of constants'],
    ['=1+1', '[1 + 1]', 'a leading equals sign'],
    [' 1 +\t2\n', '[1 + 2]', 'blanks anywhere'],
  ])('%s is %s: %s', (formula, expected) => check(formula, expected));
});

describe('references, names and calls', () => {
  test.each([
    ['B7', 'c1r6', 'an address'],
    ['b7', 'c1r6', 'an address in lower case'],
    ['$B7', 'c1$r6', 'a fixed column'],
    ['B$7', 'c1r6$', 'a fixed row'],
    ['AA10', 'c26r9', 'two letters'],
    ['B7:C9', 'c1r6..c2r8', 'a range'],
    ['C9:B7', 'c1r6..c2r8', 'a range from the other corner'],
    ['$C9:B$7', 'c1r6$..c2$r8', 'each $ stays with its own row or column'],
    ['roster!B7', 'roster!c1r6', 'a cell of another sheet'],
    ['roster!$B$7:C9', 'roster!c1$r6$..c2r8', 'a range of another sheet'],
    ['femur', 'femur', 'a column of this sheet'],
    ['roster.femur', 'roster.femur', 'a whole column'],
    ['größe_1', 'größe_1', 'a name in any script'],
    ['SEG.RATIO(femur, tibia)', 'SEG.RATIO(femur tibia)', 'a function with a point in its name'],
    ['log10(100)', 'LOG10(100)', 'a function that reads as an address'],
    ['IF(a,,b)', 'IF(a _ b)', 'an argument left out (OpenFormula 5.6)'],
    ['F(,)', 'F(_ _)', 'two arguments left out'],
    ['PI()', 'PI()', 'no argument'],
    ['#REF!femur/2', '[#REF!<femur> / 2]', 'a deleted column, with its old name'],
    ['#REF!roster.femur', '#REF!<roster.femur>', 'a deleted column of another sheet'],
    ['#REF!B7:C9+1', '[#REF!<B7:C9> + 1]', 'a deleted range'],
  ])('%s is %s: %s', (formula, expected) => check(formula, expected));
});

describe('a formula that cannot be read says where and what was expected', () => {
  test.each([
    ['', 0],
    ['1+', 2],
    ['(1', 2],
    ['1 2', 2],
    ['1)', 1],
    ['SUM(1', 5],
    ['SUM(1;2)', 5],
    ['44cm', 0],
    ['2+44 cm', 5],
    ['"open', 0],
    ['“text”', 0],
    ['3×4', 1],
    ['a.b.c', 0],
    ['roster.', 0],
    ['roster.B7', 0],
    ['roster!femur', 0],
    ['femur:tibia', 0],
    ['$femur', 0],
    ['A0', 0],
    ['ZZZ1048577', 0],
    ['{1,2;3}', 0],
    ['{A1}', 1],
    ['1e999', 0],
    ['[1]', 0],
    ['1,2', 1],
  ])('%s', (formula, at) => {
    const parsed = parse(formula);
    if (parsed.ok) throw new Error('was read');
    expect(parsed.span.from).toBe(at);
    expect(`${formula}: ${sentenceOf(parsed.issue)}`).toMatchSnapshot();
  });
});

describe('formulas beyond the limits end in a sentence', () => {
  test.each([
    ['600 parentheses', `${'('.repeat(600)}1${')'.repeat(600)}`, 'too-deep'],
    ['600 calls inside one another', `${'ABS('.repeat(600)}1${')'.repeat(600)}`, 'too-deep'],
    ['600 signs', `${'-'.repeat(600)}1`, 'too-deep'],
    ['600 operators in a row', `1${'+1'.repeat(600)}`, 'too-many-operators'],
    ['600 per cent signs', `1${'%'.repeat(600)}`, 'too-many-operators'],
    ['10,000 characters', `1${' '.repeat(10_000)}`, 'formula-too-long'],
    ['300 arguments', `SUM(${'1,'.repeat(299)}1)`, 'too-many-written'],
  ])('%s', (_, formula, reason) => {
    const parsed = parse(formula);
    expect(parsed.ok ? 'read' : parsed.issue.reason).toBe(reason);
    if (!parsed.ok) expect(sentenceOf(parsed.issue)).toMatchSnapshot();
  });
});
