import { describe, expect, test } from 'vitest';
import { retired } from './words/retired.ts';
import { type Said, saidIn, saidInBook, saidInDocument, saidInSource } from './words/texts.ts';

/** What is looked through, by its name; a further area is a further line. */
const areas: Readonly<Record<string, readonly string[]>> = {
  'function help and its pages': ['functions'],
  guides: ['src/guides'],
  'the command line': ['src/cli'],
  'the page': ['src/app'],
  'the book and its units': ['src/book', 'src/units', 'src/store', 'src/worker'],
  formulas: ['src/calc'],
  import: ['src/intake'],
  'commands, figure, charts, checks, handouts, report': ['src/session'],
  'sample books': ['sample-books'],
  documents: ['README.md', 'docs'],
};

/** Where such a word is right, and why. */
const allowed: readonly (readonly [text: RegExp, because: string])[] = [
  [/\barms( are)? held\b|\bbar is held\b/i, 'hands hold arms and bars'],
  [/Beginning Weight Training/, 'the title of a book'],
  [/^(not kept|own value|named cell)$/, 'names of states and kinds in the code, which nobody reads'],
  [
    /^an object with …; accepted are date, text, formula, or held with reason$/,
    'the name of the field in a book file',
  ],
  [/^doubts errors problems warnings unreadable$/, 'words that people may search by'],
  [/\bfeet stand on the floor\b|^Stand barefoot/, 'people stand'],
  [
    /^--differing <leave\|take\|add>$|^--differing is the former name of --on-conflict/,
    'the former name is read, and its user told the new one',
  ],
];

interface Found extends Said {
  readonly word: string;
  readonly instead: string;
}

/** Every retired word in texts, but for the places where it is right. */
const found = (said: readonly Said[]): readonly Found[] =>
  said.flatMap(({ where, text }) => {
    const rest = allowed.reduce((left, [right]) => left.replace(right, ''), text);
    return retired.flatMap(([pattern, instead]) => {
      const word = pattern.exec(rest)?.[0];
      return word === undefined ? [] : [{ where, word, instead, text: text.slice(0, 200) }];
    });
  });

describe('the words of the product', () => {
  test.each(Object.entries(areas))('%s: none is retired', (_, paths) => {
    const said = saidIn(...paths);
    expect(said.length).toBeGreaterThan(10);
    expect(found(said)).toEqual([]);
  });

  test('a retired word is found in a sentence, a label, a template, markup, a book and a document', () => {
    const source = [
      'const a = { label: "Lean seen" };',
      'const b = say(`These cells are held back: ` + n);',
      'const c = () => <p title="Named cells">Bring the file in.</p>;',
    ].join('\n');
    const words = (said: readonly Said[]) => found(said).map(({ where, word }) => `${where} ${word}`);
    expect(words(saidInSource('planted.tsx', source))).toEqual([
      'planted.tsx:1 Lean seen',
      'planted.tsx:2 held',
      'planted.tsx:3 Named cells',
      'planted.tsx:3 Bring the file in',
    ]);
    const book = { sheets: [{ name: 'relations', label: 'Lifts on hand', formula: 'A held B' }] };
    expect(words(saidInBook('planted.leverbook.json', JSON.stringify(book)))).toEqual([
      'planted.leverbook.json /sheets/0/label on hand',
    ]);
    expect(words(saidInDocument('planted.md', '# Title\n\nOne row a lifter.\n'))).toEqual([
      'planted.md ¶2 One row a lifter',
    ]);
    expect(words(saidInDocument('planted.html', '<p>Fine.</p><td>a rule of the <b>trade</b></td>'))).toEqual([
      'planted.html ¶2 of the trade',
    ]);
  });

  test('code, names of columns, formulas and words that people search by are not looked at', () => {
    const source =
      "import { held } from './held.ts';\nconst a = { is: 'held', column: 'lean_seen', searchWords: ['knee bend'] };";
    expect(found(saidInSource('code.ts', source))).toEqual([]);
  });

  test('every place where a retired word is right is still said', () => {
    const said = saidIn(...Object.values(areas).flat());
    const idle = allowed.filter(([text]) => !said.some((one) => text.test(one.text)));
    expect(idle).toEqual([]);
  });
});
