import { outcomesOfCalls } from './calls.ts';
import { outcomesOfFormulas } from './formulas.ts';

/** Lets the tests of digits.test.ts run the same calls here. */
Object.assign(globalThis, { outcomesOfCalls, outcomesOfFormulas });
