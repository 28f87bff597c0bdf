/** A formula's text cut into tokens. */
import { type ErrorCode, type Issue, issue } from '../../../functions/core/issue.ts';
import type { Span } from '../api.ts';

export type TokenType =
  | 'number'
  | 'text'
  | 'error'
  | 'word'
  | 'operator'
  | 'bracket'
  | 'separator'
  | 'unknown'
  | 'end';

/** A piece of a formula's text; `text` is as typed. */
export interface Token extends Span {
  readonly type: TokenType;
  readonly text: string;
  /** Of a number. */
  readonly value?: number;
  /** Of a text: without its quotes. Of an error value: its code in capitals. */
  readonly content?: string;
  /** Of `#REF!femur`: the name whose target was deleted. */
  readonly lost?: string;
  /** Why an unknown piece is not part of the language. */
  readonly issue?: Issue;
}

const patterns = {
  blank: /[\s\u00a0]+/uy,
  number: /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/uy,
  text: /"(?:[^"]|"")*"/uy,
  error: /#(?:N\/A|VALUE!|NUM!|DIV\/0!|REF!|NAME\?|CYCLE!|SPILL!|ERROR!)/iuy,
  word: /[\p{L}_$][\p{L}\p{M}\p{N}_.$]*/uy,
  lost: /[\p{L}_$][\p{L}\p{M}\p{N}_.$!:]*/uy,
  operator: /<>|<=|>=|[-+*/^&=<>%:!]/uy,
  bracket: /[(){}]/uy,
  separator: /[,;]/uy,
} as const;

/** Characters that keyboards and other writings put where the language has another one. */
const instead: Readonly<Record<string, string>> = {
  '“': '"',
  '”': '"',
  '„': '"',
  '«': '"',
  '»': '"',
  '‘': '"',
  '’': '"',
  "'": '"',
  '×': '*',
  '·': '*',
  '÷': '/',
  '−': '-',
  '–': '-',
  '≤': '<=',
  '≥': '>=',
  '≠': '<>',
  '[': '(',
  ']': ')',
  '|': ';',
};

/** Splits a formula into its pieces; never throws. The last token is the end, of no length. */
export function lex(formula: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    return pattern.exec(formula)?.[0];
  };
  const add = (type: TokenType, text: string, rest: Partial<Token> = {}): void => {
    tokens.push({ type, text, from: at, to: at + text.length, ...rest });
    at += text.length;
  };
  if (formula.startsWith('=')) at = 1;
  while (at < formula.length) {
    const blank = match(patterns.blank);
    if (blank) {
      at += blank.length;
      continue;
    }
    const number = match(patterns.number);
    if (number) {
      const after = formula.slice(at + number.length).match(/^[\p{L}_]+/u)?.[0];
      const value = Number(number);
      if (after)
        add('unknown', number + after, {
          issue: issue('#ERROR!', 'number-with-letters', { received: number + after, expected: number }),
        });
      else if (!Number.isFinite(value))
        add('unknown', number, { issue: issue('#ERROR!', 'number-too-large', { received: number }) });
      else add('number', number, { value });
      continue;
    }
    const text = match(patterns.text);
    if (text) {
      add('text', text, { content: text.slice(1, -1).replaceAll('""', '"') });
      continue;
    }
    const error = match(patterns.error);
    if (error) {
      const code = error.toUpperCase() as ErrorCode;
      const from = at;
      at += error.length;
      const lost = code === '#REF!' ? match(patterns.lost) : undefined;
      at = from;
      add('error', error + (lost ?? ''), { content: code, ...(lost ? { lost } : {}) });
      continue;
    }
    const word = match(patterns.word);
    if (word) {
      add('word', word);
      continue;
    }
    const operator = match(patterns.operator);
    if (operator) {
      add('operator', operator);
      continue;
    }
    const bracket = match(patterns.bracket);
    if (bracket) {
      add('bracket', bracket);
      continue;
    }
    const separator = match(patterns.separator);
    if (separator) {
      add('separator', separator);
      continue;
    }
    if (formula[at] === '"') {
      add('unknown', formula.slice(at), { issue: issue('#ERROR!', 'open-text') });
      continue;
    }
    const character = String.fromCodePoint(formula.codePointAt(at)!);
    const remedy = instead[character];
    add('unknown', character, {
      issue: issue('#ERROR!', 'unknown-character', {
        received: character,
        ...(remedy ? { expected: remedy } : {}),
      }),
    });
  }
  add('end', '');
  return tokens;
}
