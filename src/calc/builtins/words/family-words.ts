/** What is said about a built-in function, read from lines of text: a line a function, lines after it that are set in say more. */
import { type ParameterWords, parameterWords } from './parameter-words.ts';

export interface Argument extends ParameterWords {
  readonly name: string;
  readonly optional: boolean;
  /** As a formula writes it; absent where the function does without. */
  readonly fallback?: string;
}

export interface Words {
  readonly name: string;
  readonly parameters: readonly Argument[];
  /** Parameters that repeat together: [from, to) among `parameters`. */
  readonly repeats?: readonly [from: number, to: number];
  readonly summary: string;
  readonly more: readonly string[];
  readonly searchWords: readonly string[];
  /** A call with placeholders that the open book fills. */
  readonly example: string;
  /** In the standard, OpenFormula; otherwise common practice. */
  readonly standard: boolean;
}

export interface FamilyWords {
  /** Its heading. */
  readonly title: string;
  /** Where the standard has it. */
  readonly part: string;
  readonly functions: readonly Words[];
}

const LINE = /^(!?)([A-Z0-9._]+)\((.*?)\): ([^|]+)(?:\|([^|]*))?(?:\|(.*))?$/;

/**
 * `NAME(argument, repeated*, [optional=default]): Summary. | words to search by | example`; a `!` before the name where the
 * standard lacks the function. @throws a line of another form, an argument that is not known
 */
export function words(title: string, part: string, text: string): FamilyWords {
  const functions: Words[] = [];
  for (const line of text.trim().split('\n')) {
    const last = functions.at(-1);
    if (line.startsWith('  ') && last)
      functions[functions.length - 1] = { ...last, more: [...last.more, line.trim()] };
    else functions.push(wordsOf(line));
  }
  return { title, part, functions };
}

function wordsOf(line: string): Words {
  const [, without, name, inside, summary, search, example] = LINE.exec(line) ?? [];
  if (name === undefined) throw new Error(`Not a line about a function: ${line}`);
  const pieces = inside!.split(', ').filter(Boolean);
  const parameters = pieces.map((piece) => argumentOf(piece, name));
  const from = pieces.findIndex((piece) => piece.endsWith('*'));
  const to = pieces.findLastIndex((piece) => piece.endsWith('*')) + 1;
  return {
    name,
    parameters,
    ...(from < 0 ? {} : { repeats: [from, to] as const }),
    summary: summary!.trim(),
    more: [],
    searchWords: (search ?? '')
      .split(',')
      .map((one) => one.trim())
      .filter(Boolean),
    example: example?.trim() || plainExample(name, parameters),
    standard: without === '',
  };
}

function argumentOf(piece: string, of: string): Argument {
  const [, open, name, fallback] = /^(\[?)([a-z0-9_]+)(?:=([^\]]+))?\*?\]?$/.exec(piece) ?? [];
  const known = parameterWords.get(name ?? '');
  if (!name || !known) throw new Error(`${of}: nothing is known of the argument ${piece}`);
  return { name, ...known, optional: open === '[', ...(fallback === undefined ? {} : { fallback }) };
}

/** What must be there, each as its own example. */
const plainExample = (name: string, parameters: readonly Argument[]): string =>
  `${name}(${parameters
    .filter(({ optional }) => !optional)
    .map(({ example }) => example)
    .join(', ')})`;
