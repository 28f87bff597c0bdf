import type { Progress } from '../api.ts';
import { kindOfFile } from './kind-of-file.ts';
import type { Prepared, PrepareOptions } from './prepared.ts';

/**
 * Makes any file that is accepted readable: text stays as it is, a table is taken out of a zipped workbook. What opens
 * workbooks is loaded only when one arrives. Answers a task that can be run step by step.
 * @throws IntakeRefusal
 */
export async function preparing(
  bytes: Uint8Array,
  options: PrepareOptions = {},
): Promise<Generator<Progress, Prepared>> {
  if (kindOfFile(bytes, options.name ?? '') === 'text') return asItIs(bytes);
  const { opening } = await import('./workbook/open.ts');
  return opening(bytes, options);
}

/** The same at once. */
export async function prepare(bytes: Uint8Array, options: PrepareOptions = {}): Promise<Prepared> {
  const task = await preparing(bytes, options);
  for (;;) {
    const step = task.next();
    if (step.done) return step.value;
  }
}

// biome-ignore lint/correctness/useYield: a task without steps
function* asItIs(bytes: Uint8Array): Generator<Progress, Prepared> {
  return { bytes, options: {} };
}
