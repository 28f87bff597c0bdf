import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { note, type Reason, sentence, sentences } from '../../src/intake/sentences/index.ts';

/** A plausible detail for every name that a sentence may ask for. */
const details = {
  rule: 'Sets × repetitions × load.',
  added: 3,
  also: 'id',
  because: 'longer than any measured',
  begin: 'Total',
  bounds: '15 to 80',
  by: 'accents',
  cells: 4,
  choices: 'left, right',
  clock: 'h:mm',
  column: 'femur',
  columns: 3,
  computed: 9300,
  count: 3,
  decimal: '.',
  dimension: 'length',
  dmy: '17/01/2026',
  doubt: 'the femur is long for the tibia',
  encoding: 'windows-1252',
  example: '44,5',
  expected: 'cm',
  factor: 0.1,
  fields: 5,
  filled: 10,
  fit: 9,
  found: 'utf-8',
  given: '9900',
  heading: 'Femur (cm)',
  headings: 'name, femur',
  key: 'id',
  kind: 'numbers',
  label: 'Column 4',
  known: 'cm, mm',
  largest: 512_000_000,
  length: 200_000,
  line: 7,
  mark: ',',
  matching: 20,
  made: 12,
  mdy: '01/19/2026',
  most: 4000,
  name: 'log.csv',
  table: 'Sheet 1',
  tables: 'Sheet 1, Notes',
  names: '"left", "left 2"',
  units: '12 kg, 3 lb',
  one: 'Men: men.csv',
  other: 'Women: women.csv',
  no: 'no',
  order: 'dmy',
  position: 4,
  problem: 'columns is missing',
  proposed: 'metres',
  raw: 'Total;135',
  recipe: 'Survey',
  remedy: 'Unpack it first.',
  roster: 'roster',
  rows: 20,
  sheet: 'roster',
  size: 900_000_000,
  text: '44 cm',
  texts: '"Ada", "Bo"',
  unit: 'cm',
  value: 4.3,
  values: '"Ada Holm"',
  what: 'a picture (PNG)',
  why: 'it is no number.',
  word: 'cm',
  words: '"NA"',
  wouldBe: 43,
  write: 44,
  yes: 'yes',
};

describe('the sentences of the intake', () => {
  const reasons = Object.keys(sentences) as Reason[];

  test.each(reasons)('%s reads as a sentence, with nothing left open', (reason) => {
    const words = sentence(note(reason, details));
    expect(words).not.toMatch(/undefined|NaN(?!")|\[object/);
    expect(words).toMatch(/[.?]$/);
    expect(words).toMatch(/^["A-Z0-9]/);
  });

  test('each of them is said somewhere', () => {
    const folder = join(import.meta.dirname, '../../src/intake');
    const code = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !file.endsWith('sentences.ts'))
      .map((file) => readFileSync(join(folder, file), 'utf8'))
      .join('\n');
    expect(reasons.filter((reason) => !code.includes(`'${reason}'`))).toEqual([]);
  });

  test('all of them stand in one snapshot', () => {
    const all = reasons.map((reason) => `${reason}: ${sentence(note(reason, details))}`);
    expect(all.join('\n')).toMatchSnapshot();
  });
});
