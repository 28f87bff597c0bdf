import { outcomesOfCalls } from './calls.ts';

/** Lets the test of digits.test.ts run the same calls here. */
Object.assign(globalThis, { outcomesOfCalls });
