/** How the command ends. Documented in `--help` and README; scripts rely on it. */
export const Exit = {
  /** Done. A formula's error value is a result, not a failure. */
  done: 0,
  /** A fault of the program itself. */
  fault: 1,
  /** Something that was handed in cannot be used: a file, an option, a name. Nothing was written. */
  refused: 2,
  /** Stopped by the user (interrupt) while calculating. Nothing was written. */
  stopped: 130,
} as const;

/** Input that cannot be used. The message says what arrived, what is accepted and what to do. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
}
