/** How the command ends. Documented in `--help` and README; scripts rely on it. */
export const Exit = {
  /** Done. A formula's error value is a result, not a failure. */
  done: 0,
  /** A fault of the program itself. */
  fault: 1,
  /** Something that was handed in cannot be used: a file, an option, a name. No file was written, or the message says which. */
  refused: 2,
  /** The time allowed with --timeout is over. No file was written. */
  outOfTime: 124,
  /** Interrupted by the user. No file was written. */
  interrupted: 130,
} as const;

/** Input that cannot be used. The message says what arrived, what is accepted and what to do. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
}

/** What is said about a fault of the program itself, with what helps to find it. */
export const faultOf = (error: unknown, during = ''): string =>
  `leverbook: a fault of the program${during}: ${error instanceof Error ? (error.stack ?? error.message) : error}`;
