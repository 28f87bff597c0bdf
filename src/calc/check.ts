/** What is wrong with a formula that is being written, and the colour of each of its pieces. */
import { nameKey } from '../book/names.ts';
import type { FormulaCheck, Span } from './api.ts';
import { isFunction } from './catalogue.ts';
import { readAndBind } from './graph/formula.ts';
import { readsAsAddress } from './language/address.ts';
import type { BookIndex } from './language/book-index.ts';
import { lex, type Token } from './language/lexer.ts';
import { rowDoubts } from './row-doubts.ts';
import { sentenceOf } from './sentences.ts';

type Colour = FormulaCheck['tokens'][number]['is'];
type Coloured = FormulaCheck['tokens'][number];

/** The pieces of a formula by meaning, and all that is wrong with it, without computing anything. */
export function checkFormula(
  text: string,
  index: BookIndex,
  scope: { readonly sheet?: string | undefined; readonly column: boolean },
): Omit<FormulaCheck, 'meaning'> {
  const { problems, bound } = readAndBind(text, index, scope);
  return {
    ok: problems.length === 0,
    problems: problems.map(({ span, issue }) => ({
      from: span.from,
      to: span.to,
      issue,
      sentence: sentenceOf(issue),
    })),
    doubts: problems.length === 0 ? rowDoubts(bound, index) : [],
    tokens: coloured(lex(text), index, scope.sheet),
  };
}

function coloured(
  tokens: readonly Token[],
  index: BookIndex,
  sheet: string | undefined,
): readonly Coloured[] {
  const names = letNames(tokens);
  return tokens.flatMap((token, i): readonly Coloured[] => {
    const span = { from: token.from, to: token.to };
    switch (token.type) {
      case 'end':
        return [];
      case 'word':
        return word(token, tokens[i + 1]!, index, sheet, names);
      case 'separator':
        return [{ ...span, is: 'operator' }];
      case 'error':
        return [{ ...span, is: token.lost ? 'unknown' : 'text' }];
      default:
        return [{ ...span, is: token.type }];
    }
  });
}

/** Names that stand where LET gives names. */
function letNames(tokens: readonly Token[]): ReadonlySet<string> {
  const names = new Set<string>();
  if (!tokens.some((t) => t.text.toUpperCase() === 'LET')) return names;
  tokens.forEach((token, i) => {
    const before = tokens[i - 1]?.text;
    if (token.type === 'word' && (before === '(' || before === ',') && tokens[i + 1]?.text === ',')
      names.add(nameKey(token.text));
  });
  return names;
}

function word(
  token: Token,
  next: Token,
  index: BookIndex,
  sheetId: string | undefined,
  names: ReadonlySet<string>,
): readonly Coloured[] {
  const is = (colour: Colour, span: Span = token): Coloured => ({ from: span.from, to: span.to, is: colour });
  const key = nameKey(token.text);
  if (next.text === '(') return [is(isFunction(token.text) ? 'function' : 'unknown')];
  if (next.text === '!') return [is(index.sheets.has(key) ? 'sheet' : 'unknown')];
  if (readsAsAddress(token.text)) return [is('cell')];
  if (key === 'true' || key === 'false') return [is('number')];
  const dot = token.text.indexOf('.');
  if (dot > 0) {
    const sheet = index.sheets.get(nameKey(token.text.slice(0, dot)));
    const column = sheet?.columns.has(nameKey(token.text.slice(dot + 1)));
    const at = token.from + dot;
    return [
      is(sheet ? 'sheet' : 'unknown', { from: token.from, to: at }),
      is('operator', { from: at, to: at + 1 }),
      is(column ? 'column' : 'unknown', { from: at + 1, to: token.to }),
    ];
  }
  const own = sheetId === undefined ? undefined : index.sheetsById.get(sheetId);
  if (names.has(key)) return [is('name')];
  if (own?.columns.has(key)) return [is('column')];
  return [is(index.names.has(key) ? 'name' : 'unknown')];
}
