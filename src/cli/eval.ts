import { isIssue } from '../../functions/core/issue.ts';
import { isMatrix, type Matrix, type Value } from '../../functions/core/value.ts';
import { Session } from '../session/session.ts';
import { Refusal } from './exit.ts';
import { readText } from './files.ts';
import { print } from './print.ts';
import { begin, computing } from './thread.ts';
import { onOneLine } from './visible.ts';

/** The formulas that are to be evaluated: those given, else those of the file, else those on standard input. @throws Refusal */
export async function formulasGiven(
  given: readonly string[],
  options: { file?: string },
): Promise<readonly string[]> {
  if (given.length > 0 && options.file !== undefined)
    throw new Refusal('Formulas were given both as arguments and with --file. Give one of the two.');
  const formulas =
    given.length > 0
      ? given
      : linesOf(options.file === undefined ? await standardInput() : fromFile(options.file));
  if (formulas.length === 0)
    throw new Refusal(
      'No formula arrived. Give formulas as arguments, with --file FILE, or on standard input, one per line.',
    );
  return formulas;
}

/**
 * Evaluates formulas outside a book: literals, inline arrays, functions. One line out for each formula in, also for a
 * formula that cannot be read: its error is its result.
 */
export function evalCommand(formulas: readonly string[], options: { json?: boolean }): void {
  const session = Session.create();
  begin();
  for (const formula of formulas) {
    computing(formula);
    const value = session.evaluate(formula);
    print(options.json ? asJson(session, formula, value) : asText(session, value));
  }
}

const linesOf = (text: string): string[] => text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '');

const fromFile = (path: string): string =>
  readText(path, 'a text file with a formula on each line').replace(/^\uFEFF/, '');

async function standardInput(): Promise<string> {
  if (process.stdin.isTTY) return '';
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

function asJson(session: Session, formula: string, value: Value | Matrix): string {
  if (isIssue(value)) return JSON.stringify({ formula, error: value.code, message: session.sentence(value) });
  return JSON.stringify({
    formula,
    value: isMatrix(value)
      ? nested(value, (v) => (isIssue(v) ? { error: v.code, message: session.sentence(v) } : v))
      : value,
  });
}

function asText(session: Session, value: Value | Matrix): string {
  if (isMatrix(value))
    return nested(value, (v) => single(session, v))
      .map((row) => row.join('\t'))
      .join('\n');
  return single(session, value);
}

function single(session: Session, value: Value): string {
  if (value === null) return '';
  if (isIssue(value)) return `${value.code}  ${onOneLine(session.sentence(value))}`;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return onOneLine(String(value));
}

function nested<T>(matrix: Matrix, each: (value: Value) => T): T[][] {
  return Array.from({ length: matrix.rows }, (_, r) =>
    Array.from({ length: matrix.columns }, (_, c) => each(matrix.values[r * matrix.columns + c] ?? null)),
  );
}
