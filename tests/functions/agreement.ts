import { expect } from 'vitest';

/** Half a unit of the last decimal that is written. */
function halfUnit(written: number): number {
  const [digits, exponent] = String(written).split('e');
  return 0.5000001 * 10 ** (Number(exponent ?? 0) - (digits!.split('.')[1] ?? '').length);
}

/** Holds a value against what the help says it is: numbers to the digits written there, the rest exactly. */
export function expectAgreement(value: unknown, gives: unknown): void {
  if (typeof gives === 'number') {
    if (typeof value !== 'number' || Math.abs(value - gives) > halfUnit(gives))
      expect.fail(`gives ${JSON.stringify(value)}, the help says ${gives}`);
  } else if (Array.isArray(gives)) {
    expect((value as unknown[]).length).toBe(gives.length);
    gives.forEach((each, i) => {
      expectAgreement((value as unknown[])[i], each);
    });
  } else expect(value).toBe(gives);
}
