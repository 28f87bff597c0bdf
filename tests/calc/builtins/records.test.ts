/** What a record of a built-in function has to say, and that nothing else says it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HyperFormula } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { registry } from '../../../functions/registry.ts';
import { builtInHelp, exampleOf, familyWords, signatureOf } from '../../../src/calc/builtins/api.ts';
import { builtIns, families } from '../../../src/calc/builtins/index.ts';
import { notOffered } from '../../../src/calc/builtins/not-offered.ts';
import { functionNames } from '../../../src/calc/catalogue.ts';
import { Session } from '../../../src/session/session.ts';
import { root, sources } from '../../source-files.ts';

const records = Object.entries(families).flatMap(([family, all]) =>
  all.map((record) => ({ family: family as keyof typeof families, record })),
);
const wordsOf = new Map(
  Object.entries(familyWords).flatMap(([family, { functions }]) =>
    functions.map((words) => [words.name, { family, words }] as const),
  ),
);
/** What the cell engine itself says of a function. */
function engineOf(name: string) {
  const plugin = HyperFormula.getFunctionPlugin(name);
  const known = plugin?.implementedFunctions[plugin.aliases?.[name] ?? name];
  return known && { ...known, alias: plugin.aliases?.[name] };
}

describe('the records of built-in functions', () => {
  test('cover every function that the language accepts, each name once', () => {
    const names = records.flatMap(({ record }) => [record.name, ...record.aliases]);
    expect(names.length).toBe(new Set(names).size);
    expect([...functionNames()].filter((name) => !registry.has(name))).toEqual([...names].sort());
    expect(names.filter((name) => registry.has(name))).toEqual([]);
  });

  test('cover what the cell engine brings along, but for what is left out with a reason', () => {
    const engine = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => !name.startsWith('HF.'));
    expect(engine.length).toBeGreaterThan(350);
    expect(engine.filter((name) => !builtIns.has(name) && !notOffered.has(name))).toEqual([]);
    expect([...notOffered.keys()].filter((name) => builtIns.has(name))).toEqual([]);
  });

  test.each(records)('$record.name has every field and words in its family', ({ family, record }) => {
    expect(record.measures).toBeDefined();
    expect(Object.keys(record.implementation).length).toBeGreaterThan(0);
    expect(record.export === null || record.export.as.length > 0).toBe(true);
    const said = wordsOf.get(record.name);
    expect(said?.family).toBe(family);
    expect(said!.words.summary).toMatch(/^[\p{Lu}1eF].*\.$/u);
    expect(said!.words.summary.split(' ').length).toBeLessThan(20);
    for (const more of said!.words.more) expect(more).toMatch(/^\p{Lu}.*\.$/u);
  });

  test('have no words that belong to none of them', () => {
    expect([...wordsOf.keys()].filter((name) => builtIns.get(name)?.name !== name)).toEqual([]);
  });

  test('name the aliases that the cell engine has, and no others of its functions', () => {
    for (const { record } of records)
      for (const alias of record.aliases) {
        const engine = engineOf(alias);
        if (!engine) continue;
        expect([alias, engineOf(record.name)?.method]).toEqual([alias, engine.method]);
      }
  });

  test('say which functions give another value each time, as the cell engine does', () => {
    for (const { record } of records) {
      const engine = engineOf(record.name);
      if (engine)
        expect([record.name, record.volatile !== undefined]).toEqual([
          record.name,
          engine.isVolatile === true,
        ]);
    }
  });

  test('an exported name is the record’s own, or another of its names', () => {
    for (const { record } of records)
      for (const name of record.export?.as ?? [])
        expect([record.name, ...record.aliases]).toContain(name.replace(/^_xlfn\./, ''));
  });
});

/** Kinds that fit what the cell engine asks for. */
const fits: Readonly<Record<string, readonly string[]>> = {
  NUMBER: ['number', 'date', 'numbers'],
  INTEGER: ['number'],
  STRING: ['text'],
  BOOLEAN: ['condition'],
  SCALAR: ['value', 'text', 'number', 'values'],
  NOERROR: ['value', 'criterion', 'range', 'number'],
  ANY: ['numbers', 'values', 'value', 'complex', 'text'],
  RANGE: ['range', 'numbers', 'condition'],
  COMPLEX: ['complex'],
};
/** Functions whose own body, or the language, reads the arguments in another way than the engine does. */
const otherwise = new Set(['COLUMN', 'SUBTOTAL', 'FALSE', 'TRUE']);

describe('the arguments in the words', () => {
  test.each(records.filter(({ record }) => engineOf(record.name) && !otherwise.has(record.name)))(
    '$record.name takes what the cell engine says',
    ({ record }) => {
      const { parameters, repeats } = wordsOf.get(record.name)!.words;
      const { parameters: given = [], repeatLastArgs = 0 } = engineOf(record.name)!;
      const asked = parameters.map(({ kind }) => kind);
      // SWITCH has a last value of its own, which the engine counts among the cases.
      const shared = Math.min(asked.length, given.length);
      for (let i = 0; i < shared; i++)
        expect([record.name, i, fits[given[i]!.argumentType]]).toEqual([
          record.name,
          i,
          expect.arrayContaining([asked[i]]),
        ]);
      const needed = given.filter((p) => !p.optionalArg && p.defaultValue === undefined).length;
      if (repeatLastArgs === 0) {
        expect(asked.length).toBe(given.length);
        expect(parameters.filter(({ optional }) => !optional).length).toBe(needed);
      } else expect(repeats).toBeDefined();
      parameters.forEach(({ optional, fallback }, i) => {
        const { defaultValue } = given[i] ?? {};
        if (optional && typeof defaultValue === 'number')
          expect([record.name, Number(fallback)]).toEqual([record.name, defaultValue]);
      });
    },
  );

  test.each(records.filter(({ record }) => record.implementation.own))(
    '$record.name takes as many as its own body',
    ({ record }) => {
      const { parameters, repeats } = wordsOf.get(record.name)!.words;
      const { minArgs, maxArgs } = record.implementation.own!;
      expect(parameters.filter(({ optional }) => !optional).length).toBe(minArgs);
      if (repeats) expect(maxArgs).toBe(255);
      else expect(parameters.length).toBe(maxArgs);
    },
  );

  test('a signature reads as a call does', () => {
    const signature = (name: string) => signatureOf(wordsOf.get(name)!.words);
    expect(signature('IF')).toBe('IF(condition, then, [else=FALSE])');
    expect(signature('SUMIFS')).toBe('SUMIFS(numbers, where, criterion, …)');
    expect(signature('LET')).toBe('LET(name, value, …, result)');
    expect(signature('PI')).toBe('PI()');
  });
});

describe('examples over the names of an open book', () => {
  const session = Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
  const sheet = session.current.sheets[0]!;
  const place = { sheet: sheet.id, column: sheet.columns[0]!.id, row: 4 };
  const of = (name: string) => session.builtInExample(exampleOf(name)!, place);

  test.each([...wordsOf.keys()].filter((name) => name !== 'NA'))('%s gives a value', (name) => {
    const example = of(name);
    expect(example).not.toBeNull();
    expect([example!.formula, example!.error ? example!.result : '']).toEqual([example!.formula, '']);
    expect(example!.formula).toContain(`${name}(`);
  });

  test('are written with the columns of the sheet', () => {
    expect(of('IF')!.formula).toMatch(/^IF\(\w+ > \d+, "high", "low"\)$/);
    expect(of('XLOOKUP')!.formula).toMatch(/^XLOOKUP\(athlete, roster\.athlete, roster\.\w+\)$/);
    expect(of('SUMIFS')!.formula).toMatch(/^SUMIFS\(roster\.\w+, roster\.athlete, athlete\)$/);
    expect(of('ISOWEEKNUM')!.formula).toMatch(/^ISOWEEKNUM\(\w+\)$/);
    // An angle is as fine as it can be measured.
    expect(of('MAX')!.result).toMatch(/^\d+°$/);
    expect(of('LET')!.formula).toMatch(/^LET\(x, \w+, x \* x \+ x\)$/);
  });
});

test('help of a built-in function gives its other names, its arguments and where it comes from', () => {
  const help = builtInHelp().find(({ name }) => name === 'STDEV')!;
  expect(help.aliases).toEqual(['STDEV.S', 'STDEVS']);
  expect(help.signature).toBe('STDEV(numbers, …)');
  expect(help.sources[0]!.citation).toContain('OpenFormula');
  expect(help.result.about).toBe('in the unit of its arguments');
});

/**
 * Names of functions that stand in a file for something else, or for one function alone: the word for a kind of value, a form
 * of the language, a call that the file makes.
 */
const allowed: Readonly<Record<string, readonly string[]>> = {
  // The values, and the form whose names no file knows.
  'src/calc/a1/translate.ts': ['FALSE', 'LET', 'TRUE'],
  // Calls that it makes.
  'src/calc/blank-as-zero.ts': ['IF', 'IFERROR', 'ISBLANK', 'LET'],
  // Forms of the language: what is written tells the result.
  'src/calc/language/fixed-calls.ts': ['COLUMN', 'COLUMNS', 'ROWS', 'SEQUENCE'],
  'src/calc/plan/nature.ts': ['LET', 'ROW', 'SEQUENCE'],
  // Each says its own name in its errors.
  'src/calc/plan/branches.ts': ['CHOOSE', 'IFS', 'SWITCH'],
};

test('no list outside the records names built-in functions', () => {
  const found: Record<string, readonly string[]> = {};
  for (const path of sources) {
    if (!path.startsWith('src/') || path.startsWith('src/calc/builtins/')) continue;
    const text = readFileSync(join(root, path), 'utf8');
    const literals = [...text.matchAll(/'([A-Z][A-Z0-9. ]*)'/g)].flatMap(([, literal]) =>
      literal!.split(' '),
    );
    const keys = [...text.matchAll(/^\s*([A-Z][A-Z0-9]+)[:(]/gm)].map(([, key]) => key!);
    const words = [...literals, ...keys];
    const names = [...new Set(words)].filter((word) => builtIns.has(word));
    if (names.length > 2) found[path] = names.sort();
  }
  expect(found).toEqual(allowed);
});
