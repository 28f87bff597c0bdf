import { write } from './thread.ts';
import { visible } from './visible.ts';

/** Writes a line to standard output. */
export const print = (line: string): void => write('out', `${visible(line)}\n`);

/** Writes a line about the work to standard error. */
export const say = (line: string): void => write('err', `${visible(line)}\n`);
