import { dirname } from 'node:path';
import { buildCommand, command } from './run.ts';

/** Builds the command once before the tests that run it. */
export default async function built(): Promise<() => void> {
  const remove = await buildCommand();
  process.env.LEVERBOOK_COMMAND = dirname(command());
  return remove;
}
