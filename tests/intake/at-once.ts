/** Looking at a file and importing it, at once: the product does both in steps, so that it can be stopped. */
import type { Findings, Imported, ImportOptions, IntakeOptions, Target } from '../../src/intake/index.ts';
import { importing, inspecting } from '../../src/intake/index.ts';
import { toEnd } from '../../src/session/drive.ts';

/** @throws IntakeRefusal */
export const inspect = (bytes: Uint8Array, options: IntakeOptions = {}): Findings =>
  toEnd(inspecting(bytes, options));

/** The edits that bring a file's rows to a sheet. @throws IntakeRefusal */
export const importFile = (bytes: Uint8Array, target: Target, options: ImportOptions = {}): Imported =>
  toEnd(importing(bytes, target, options));
