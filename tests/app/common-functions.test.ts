import { expect, test } from 'vitest';
import { commonFunctions } from '../../src/app/formula/common-functions.ts';
import { functionNames } from '../../src/calc/catalogue.ts';

test('every function that is offered beside the domain’s own is one of the language, with a signature and a sentence', () => {
  expect(commonFunctions.size).toBeGreaterThan(130);
  expect([...commonFunctions.keys()].filter((name) => !functionNames().has(name))).toEqual([]);
  for (const { name, parameters, summary } of commonFunctions.values()) {
    expect(summary, name).not.toBe('');
    // What can be left out stands after what cannot, but for LET, whose result is the last.
    const optional = parameters.map((one) => one.optional);
    if (name !== 'LET') expect(optional, name).toEqual([...optional].sort());
  }
});
