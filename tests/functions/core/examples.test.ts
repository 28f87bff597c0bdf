import { describe, test } from 'vitest';
import { expectAgreement } from '../agreement.ts';
import { evaluate, plainly } from '../formula.ts';
import { definitions } from '../typical.ts';

// the other families run theirs beside their published data
const elsewhere = /^(STRENGTH|TRAIN|TEST|COHORT)\./;
const examples = definitions
  .filter(({ name }) => !elsewhere.test(name))
  .flatMap(({ name, examples }) => examples.map((example) => ({ name, ...example })));

describe('examples of lengths, ankle, lean, lift, moments, back and units', () => {
  test.each(examples)('$formula', ({ formula, gives }) => {
    expectAgreement(plainly(evaluate(formula)), gives);
  });
});
