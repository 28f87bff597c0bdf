/** The door for help, reference and command line: the built-in functions in words. Loaded when somebody asks, the words are many. */
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { practice, published, type Source } from '../../../functions/core/source.ts';
import type { BuiltIn } from './builtin.ts';
import { builtIns, type families } from './index.ts';
import { arrays } from './words/arrays-words.ts';
import { dates } from './words/dates-words.ts';
import { distributions } from './words/distributions-words.ts';
import type { Argument, FamilyWords, Words } from './words/family-words.ts';
import { finance } from './words/finance-words.ts';
import { information } from './words/information-words.ts';
import { logic } from './words/logic-words.ts';
import { lookup } from './words/lookup-words.ts';
import { notations } from './words/notations-words.ts';
import { numbers } from './words/numbers-words.ts';
import { accepted } from './words/parameter-words.ts';
import { statistics } from './words/statistics-words.ts';
import { sums } from './words/sums-words.ts';
import { tables } from './words/tables-words.ts';
import { texts } from './words/texts-words.ts';

/** The words of each family of records. */
export const familyWords: Readonly<Record<keyof typeof families, FamilyWords>> = {
  logic,
  sums,
  statistics,
  lookup,
  dates,
  numbers,
  texts,
  information,
  arrays,
  distributions,
  tables,
  notations,
  finance,
};

/** `SUMIFS(numbers, where, criterion, …)` */
export function signatureOf({ name, parameters, repeats }: Words): string {
  const written = parameters.map(({ name: of, optional, fallback }) =>
    optional ? `[${of}${fallback === undefined ? '' : `=${fallback}`}]` : of,
  );
  if (repeats) written.splice(repeats[1], 0, '…');
  return `${name}(${written.join(', ')})`;
}

/** What comes out, as far as the arguments do not decide. */
function resultWords({ measures, hands }: BuiltIn): string {
  if (hands) return 'cellFor' in hands ? 'a cell of a range' : 'one of its arguments';
  if (measures === 'plain') return 'a number';
  if (measures === 'date') return 'a date';
  if (measures === 'text') return 'text';
  if (measures === 'yes-no') return 'TRUE or FALSE';
  if (typeof measures === 'string') return 'by its arguments';
  if ('same' in measures)
    return measures.dates ? 'in the unit of its arguments, or a date' : 'in the unit of its arguments';
  return 'power' in measures && measures.power === 2
    ? 'in the square of the unit of its arguments'
    : 'by its arguments';
}

const sourceOf = ({ standard }: Words, part: string): Source =>
  standard
    ? published(`OASIS OpenDocument 1.3, part 4 (OpenFormula), ${part}`)
    : practice('spreadsheets have it under this name');

const fallbackOf = (text: string): number | string | boolean => {
  if (text === 'TRUE' || text === 'FALSE') return text === 'TRUE';
  return Number.isNaN(Number(text)) ? text.replaceAll('"', '') : Number(text);
};

const argumentHelp = ({
  name,
  about,
  kind,
  optional,
  fallback,
}: Argument): FunctionHelp['parameters'][number] => ({
  name,
  about,
  unit: '',
  accepts: accepted[kind],
  optional,
  ...(fallback === undefined ? {} : { fallback: fallbackOf(fallback) }),
});

const helpOf = (words: Words, { title, part }: FamilyWords): FunctionHelp => {
  const record = builtIns.get(words.name)!;
  return {
    name: words.name,
    builtIn: true,
    aliases: record.aliases,
    inXlsx: record.export ? 'formula' : 'values',
    family: title,
    signature: signatureOf(words),
    summary: words.summary,
    searchWords: words.searchWords,
    parameters: words.parameters.map(argumentHelp),
    ...(words.repeats ? { repeats: words.repeats } : {}),
    result: { is: 'any', unit: '', about: resultWords(record) },
    rule: '',
    sources: [sourceOf(words, part)],
    constants: [],
    cautions: [],
    notes: words.more,
    examples: [],
    seeAlso: [],
  };
};

/** All of them, family by family. */
export const builtInHelp = (): readonly FunctionHelp[] =>
  Object.values(familyWords).flatMap((family) => family.functions.map((words) => helpOf(words, family)));

let examples: ReadonlyMap<string, string> | undefined;

/** An example of a function by any of its names, with placeholders that the open book fills; undefined for others. */
export function exampleOf(name: string): string | undefined {
  examples ??= new Map(
    Object.values(familyWords).flatMap(({ functions }) =>
      functions.map((one) => [one.name, one.example] as const),
    ),
  );
  return examples.get(builtIns.get(name)?.name ?? '');
}
