import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import { DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { registry } from '../../../functions/registry.ts';
import { builtIns } from '../../../src/calc/builtins/index.ts';
import { functionNames } from '../../../src/calc/catalogue.ts';
import { cellEngineSettings } from '../../../src/calc/cell-engine/settings.ts';
import { prepare } from '../../../src/intake/index.ts';
import type { Command } from '../../../src/session/commands/index.ts';
import { Session } from '../../../src/session/session.ts';
import { workbookContent } from '../../../src/session/xlsx/content.ts';
import { mayBeDefined, sheetNames } from '../../../src/session/xlsx/names.ts';
import { writeWorkbook } from '../../../src/session/xlsx/write.ts';
import { exhaust } from '../../calc/book-for-test.ts';
import { owns } from '../../calc/builtins/own.ts';

const now = new Date('2026-03-04T05:06:07Z');
const written = (session: Session): Promise<Uint8Array> =>
  writeWorkbook(
    session.ask((context) => exhaust(workbookContent(context, now))),
    now,
  );

function bookOf(...commands: readonly Command[]): Session {
  const session = Session.create();
  for (const command of commands) {
    const done = session.execute(command);
    if (!done.ok) throw new Error(done.sentence);
  }
  return session;
}

/*
 * The file is read here as ISO/IEC 29500-1 describes it: cells (18.3.1.4), shared strings (18.4), defined names (18.2.5)
 * and number formats (18.8.30), apart from the program.
 */
interface ReadCell {
  readonly type: string;
  readonly value: string;
  readonly formula?: string;
  readonly format: string;
}
interface ReadBook {
  readonly names: readonly string[];
  readonly defined: ReadonlyMap<string, string>;
  readonly parts: Readonly<Record<string, string>>;
  /** Cells by address. */
  sheet(name: string): ReadonlyMap<string, ReadCell>;
}
const plain = (xml: string): string =>
  xml.replace(
    /&(amp|lt|gt|quot|apos);/g,
    (_, n) => ({ amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" })[n as 'amp'],
  );

function readBook(bytes: Uint8Array): ReadBook {
  const parts = Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]),
  );
  const workbook = parts['xl/workbook.xml']!;
  const shared = [...(parts['xl/sharedStrings.xml'] ?? '').matchAll(/<si>(.*?)<\/si>/gs)].map(([, si]) =>
    plain([...si!.matchAll(/<t[^>]*>(.*?)<\/t>/gs)].map(([, t]) => t).join('')),
  );
  const styles = parts['xl/styles.xml']!;
  const codes = new Map(
    [...styles.matchAll(/<numFmt numFmtId="(\d+)" formatCode="([^"]*)"/g)].map(([, id, code]) => [
      id,
      plain(code!),
    ]),
  );
  const formats = [
    ...styles
      .split('<cellXfs')[1]!
      .split('</cellXfs>')[0]!
      .matchAll(/<xf [^>]*numFmtId="(\d+)"/g),
  ].map(([, id]) => codes.get(id!) ?? id!);
  const names = [...workbook.matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(([, name]) => plain(name!));
  return {
    names,
    parts,
    defined: new Map(
      [...workbook.matchAll(/<definedName name="([^"]*)"[^>]*>(.*?)<\/definedName>/g)].map(
        ([, name, range]) => [name!, plain(range!)],
      ),
    ),
    sheet(name) {
      const cells = new Map<string, ReadCell>();
      const xml = parts[`xl/worksheets/sheet${names.indexOf(name) + 1}.xml`]!;
      for (const [, attributes, inside] of xml.matchAll(/<c ([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)) {
        const of = (key: string): string | undefined =>
          new RegExp(`\\b${key}="([^"]*)"`).exec(attributes!)?.[1];
        const raw = plain(/<(?:v|t)[^>]*>(.*?)<\/(?:v|t)>/s.exec(inside ?? '')?.[1] ?? '');
        const formula = /<f[^>]*>(.*?)<\/f>/s.exec(inside ?? '')?.[1];
        const type = of('t') ?? 'n';
        cells.set(of('r')!, {
          type,
          value: type === 's' ? shared[Number(raw)]! : raw,
          format: formats[Number(of('s') ?? 0)] ?? '',
          ...(formula === undefined ? {} : { formula: plain(formula) }),
        });
      }
      return cells;
    },
  };
}

const screening = (): Session =>
  Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));

/** Column letters and row of an address, from 0. */
const at = (address: string): [row: number, column: number] => {
  const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(address)!;
  return [Number(row) - 1, [...letters!].reduce((sum, c) => sum * 26 + c.charCodeAt(0) - 64, 0) - 1];
};

const own = new RegExp(`\\b(${[...owns.keys()].map((name) => name.replaceAll('.', '\\.')).join('|')})\\(`);

/** What was computed equals what is stored: numbers to nine digits, texts exactly. */
function expectStored(all: ReturnType<typeof recomputed>): void {
  for (const [address, formula, stored, now] of all) {
    if (typeof stored === 'number') expect(now, `${address} ${formula}`).toBeCloseTo(stored, 9);
    else expect([address, formula, now]).toEqual([address, formula, stored]);
  }
}

/** The file's formulas computed anew by the cell engine in cells of its own; answers each with the value stored beside it. */
function recomputed(book: ReadBook): [address: string, formula: string, stored: unknown, now: unknown][] {
  const sheets: Record<string, RawCellContent[][]> = {};
  for (const name of book.names) {
    const grid: RawCellContent[][] = [];
    for (const [address, { type, value, formula, format }] of book.sheet(name)) {
      const [row, column] = at(address);
      while (grid.length <= row) grid.push([]);
      const line = grid[row]!;
      while (line.length <= column) line.push(null);
      line[column] =
        formula !== undefined
          ? `=${formula.replaceAll('_xlfn.', '').replaceAll(/\b(TRUE|FALSE)\b/g, '$1()')}`
          : type === 'n'
            ? value === ''
              ? null
              : format === 'yyyy-mm-dd'
                ? new Date(1899, 11, 30 + Number(value))
                : Number(value)
            : type === 'b'
              ? value === '1'
              : type === 'e'
                ? `=${value}`
                : `'${value}`;
    }
    sheets[name] = grid;
  }
  const engine = HyperFormula.buildFromSheets(sheets, cellEngineSettings);
  for (const [name, range] of book.defined)
    if (!name.startsWith('_xlnm')) engine.addNamedExpression(name, `=${range}`);
  return book.names.flatMap((name) =>
    [...book.sheet(name)].flatMap(([address, cell]) => {
      // Not every function of the language is one of the engine's own.
      if (cell.formula === undefined || own.test(cell.formula)) return [];
      const [row, col] = at(address);
      const value = engine.getCellValue({ sheet: engine.getSheetId(name)!, row, col });
      const stored =
        cell.type === 'n' ? Number(cell.value) : cell.type === 'b' ? cell.value === '1' : cell.value;
      return [
        [
          `${name}!${address}`,
          cell.formula,
          stored,
          value instanceof DetailedCellError ? value.value : value,
        ] as [string, string, unknown, unknown],
      ];
    }),
  );
}

describe('the book as an XLSX file', () => {
  test('comes back in with the values of every sheet of the sample book', async () => {
    const session = screening();
    const bytes = await written(session);
    for (const { id, label } of session.outline().sheets) {
      const { bytes: table } = await prepare(bytes, { name: 'a.xlsx', table: label });
      const back = Papa.parse<string[]>(new TextDecoder().decode(table), { skipEmptyLines: true }).data;
      const csv = Papa.parse<string[]>(session.toCsv(id), { skipEmptyLines: 'greedy' }).data;
      const width = Math.max(...back.map((row) => row.length));
      // A text that CSV must make safe with an apostrophe is safe in a cell of its own kind.
      expect(back).toEqual(
        csv.map((row) => row.slice(0, width).map((text) => text.replace(/^'(?=[=+\-@])/, ''))),
      );
    }
  });

  test('has formulas where functions are built in, and they compute the stored values anew', async () => {
    const session = bookOf(
      {
        do: 'add-sheet',
        name: 'log',
        label: 'Training log',
        columns: [
          { name: 'athlete', kind: 'text' },
          { name: 'on', kind: 'date' },
          { name: 'load', dimension: 'mass', unit: 'kg' },
          { name: 'reps', kind: 'number' },
          { name: 'volume', kind: 'number', formula: 'load * reps' },
          { name: 'so_far', kind: 'number', formula: 'SUM($C$1:C1)' },
          { name: 'before', kind: 'number', formula: 'IF(ROW() > 1, 0, 0) + 1' },
          { name: 'share', kind: 'number', formula: 'ROUND(volume / SUM(log.volume), 3)' },
          { name: 'month_of', kind: 'number', formula: 'MONTH(on)' },
          { name: 'word', kind: 'text', formula: 'IF(load >= goal, "heavy", UPPER(LEFT(athlete, 1)) & "-")' },
          { name: 'best', kind: 'number', formula: 'MAXIFS(log.load, log.athlete, athlete)' },
          { name: 'over', kind: 'number', formula: '100 / (reps - 5)' },
          { name: 'last', kind: 'number', formula: 'C2 - C1' },
        ],
      },
      {
        do: 'set-cells',
        sheet: 'log',
        row: 0,
        columns: ['athlete', 'on', 'load', 'reps'],
        texts: [
          ['Ada', '2026-01-05', '80', '5'],
          ['Bo', '2026-02-06', '60.5', '8'],
          ['Ada', '2026-03-07', '82.5', '3'],
          ['Bo', '', '', '4'],
        ],
      },
      {
        do: 'add-sheet',
        name: 'sums',
        label: "Sums, O'Hara's",
        columns: [
          { name: 'what', kind: 'text' },
          { name: 'amount', kind: 'number' },
        ],
      },
      {
        do: 'set-cells',
        sheet: 'sums',
        row: 0,
        columns: ['what', 'amount'],
        texts: [
          ['goal', '82.5'],
          ['mean', '=AVERAGE(log.load)'],
          ['rows', '=COUNTIFS(log.athlete, "Ada", log.load, ">" & 81)'],
          ['spread', '=STDEV.S(log.load) / AVERAGE(log.load)'],
          ['found', '=XLOOKUP("Bo", log.athlete, log.load)'],
          ['sign', '=-2^2 + 50%'],
          ['joined', '=TEXTJOIN(", ", TRUE, log.athlete)'],
        ],
      },
      { do: 'name-cell', name: 'goal', sheet: 'sums', column: 'amount', row: 0 },
    );
    const book = readBook(await written(session));
    expect(book.defined.get('goal')).toBe("'Sums, O''Hara''s'!$B$1".replace('$B$1', '$B$2'));
    const log = book.sheet('Training log');
    expect(log.get('E2')?.formula).toBe('C2*D2');
    expect(log.get('F4')?.formula).toBe('SUM($C$2:$C4)');
    expect(log.get('H3')?.formula).toBe('ROUND(E3/SUM($E$2:$E$5),3)');
    expect(log.get('J2')?.formula).toBe('IF(C2>=goal,"heavy",UPPER(LEFT(A2,1))&"-")');
    expect(log.get('K2')?.formula).toBe('_xlfn.MAXIFS($C$2:$C$5,$A$2:$A$5,A2)');
    // The number of a row is another one there: the column stands as values.
    expect(log.get('G2')).toMatchObject({ value: '1' });
    expect(log.get('G2')?.formula).toBeUndefined();
    const sums = book.sheet("Sums, O'Hara's");
    expect(sums.get('B6')?.formula).toBe(
      "INDEX('Training log'!$C$2:$C$5,MATCH(\"Bo\",'Training log'!$A$2:$A$5,0))",
    );
    const all = recomputed(book);
    expect(all.length).toBeGreaterThan(30);
    expectStored(all);
    // The same by hand: Ada's loads 80 and 82.5, Bo's 60.5.
    expect(Number(sums.get('B3')!.value)).toBeCloseTo((80 + 60.5 + 82.5) / 3, 12);
  });

  test('the formulas of the sample book compute the stored values anew, and the others are named with the reason', async () => {
    const bytes = await written(screening());
    const book = readBook(bytes);
    const all = recomputed(book);
    expect(all.length).toBeGreaterThan(10);
    expectStored(all);
    const about = [...book.sheet('About').values()].map(({ value }) => value);
    expect(about).toContain('values: LEAN.PARALLEL is a function of Leverbook');
    expect(about).toContain('LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, placement, foot)');
    expect(about.join('\n')).toMatch(/comparing set-ups of one lifter, not for diagnosis/);
    expect(about.join('\n')).toMatch(/stop and see a licensed clinician/);
  });

  test('writes nothing that came as text as a formula, an error or another text', async () => {
    const texts = [
      '=1+1',
      '+1+1',
      '-1+1',
      '@SUM(1)',
      '#N/A',
      '#REF!',
      '_x0041_',
      ' led ',
      'tab\there',
      'a\nb',
      '=cmd|calc',
      '<b>&"',
      '𝄞',
      "'quoted",
    ];
    const session = bookOf(
      {
        do: 'add-sheet',
        name: 'notes',
        label: '=label',
        columns: [{ name: 'words', label: '=HEADING()', kind: 'text' }],
      },
      { do: 'add-rows', sheet: 'notes', row: 0, count: texts.length },
    );
    session.writePlanned({
      edit: {
        do: 'put-cells',
        sheet: session.outline().sheets[0]!.id,
        row: 0,
        columns: [session.outline().sheets[0]!.columns[0]!.id],
        cells: [texts],
      },
      words: 'texts',
    });
    const bytes = await written(session);
    const book = readBook(bytes);
    for (const part of Object.values(book.parts)) expect(part).not.toMatch(/<f[ >]/);
    const cells = book.sheet('=label');
    for (const cell of cells.values()) expect(['s', 'inlineStr']).toContain(cell.type);
    const { bytes: table } = await prepare(bytes, { name: 'a.xlsx', table: '=label' });
    const back = Papa.parse<string[]>(new TextDecoder().decode(table)).data.map(([text]) => text);
    expect(back.slice(0, texts.length + 1)).toEqual(['=HEADING()', ...texts]);
  });

  test('writes errors as errors, held cells as they came, and dates as days with a date format', async () => {
    const session = bookOf(
      {
        do: 'add-sheet',
        name: 'roster',
        columns: [
          { name: 'name', kind: 'text' },
          { name: 'tested', kind: 'date' },
          { name: 'femur', label: 'Femur', dimension: 'length', unit: 'in', format: { digits: 1 } },
          { name: 'fit', kind: 'yes-no' },
          { name: 'twice', dimension: 'length', unit: 'cm', formula: 'femur * 2' },
          { name: 'lean', kind: 'number', formula: 'LEAN.PARALLEL(42, 41, 51, name)' },
          { name: 'round_about', kind: 'number', formula: 'round_about + 1' },
        ],
      },
      {
        do: 'set-cells',
        sheet: 'roster',
        row: 0,
        columns: ['name', 'tested', 'femur', 'fit'],
        texts: [
          ['Ada', '2026-03-04', '17', 'yes'],
          ['Bo', '1899-12-31', 'seventeen', 'no'],
          ['Cy', 'soon', '', ''],
        ],
      },
    );
    const book = readBook(await written(session));
    const cells = book.sheet('roster');
    expect(cells.get('C1')?.value).toBe('Femur (in)');
    // 2026-03-04 is day 46085 from 1899-12-30: 46,023 is 2026-01-01.
    expect(cells.get('B2')).toEqual({ type: 'n', value: '46085', format: 'yyyy-mm-dd' });
    expect(cells.get('B3')).toMatchObject({ type: 's', value: '1899-12-31' });
    expect(cells.get('B4')).toMatchObject({ type: 's', value: 'soon' });
    expect(cells.get('C2')).toEqual({ type: 'n', value: '17', format: '0.0' });
    expect(cells.get('C3')).toMatchObject({ type: 's', value: 'seventeen' });
    expect(cells.get('D2')).toMatchObject({ type: 'b', value: '1' });
    // 34 in = 86.36 cm: read from a column in inches, so it is a value.
    expect(Number(cells.get('E2')?.value)).toBeCloseTo(86.36, 9);
    expect(cells.get('E2')?.formula).toBeUndefined();
    expect(cells.get('F2')).toMatchObject({ type: 'e', value: '#VALUE!' });
    expect(cells.get('G2')).toMatchObject({ type: 'e', value: '#VALUE!' });
    const about = [...book.sheet('About').values()].map(({ value }) => value).join('\n');
    expect(about).toContain('roster: 2 cells are unreadable');
    expect(about).toContain('shown in another unit');
  });

  test('free cells that measure different things have their units in their number format', async () => {
    const session = bookOf(
      { do: 'add-sheet', name: 'log', columns: [{ name: 'load', dimension: 'mass', unit: 'kg' }] },
      { do: 'set-cells', sheet: 'log', row: 0, columns: ['load'], texts: [['100'], ['104']] },
      { do: 'add-sheet', name: 'glance', purpose: 'worked', rows: 3, columns: [{ name: 'figure' }] },
      {
        do: 'set-cells',
        sheet: 'glance',
        row: 0,
        columns: ['figure'],
        texts: [['=MAX(log.load)'], ['=COUNT(log.load)'], ['=LEAN.SHANK(35)']],
      },
    );
    const cells = readBook(await written(session)).sheet('glance');
    expect(cells.get('A2')).toMatchObject({ type: 'n', value: '104', format: 'General" kg"' });
    expect(cells.get('A3')).toMatchObject({ type: 'n', value: '2', format: '0' });
    expect(cells.get('A4')?.format).toBe('General" deg"');
    // ISO/IEC 29500-1, 18.8.31: a literal stands in quotation marks. All of one kind: the heading says it.
    session.execute({ do: 'clear-cells', sheet: 'glance', row: 1, rows: 2, columns: ['figure'] });
    const same = readBook(await written(session)).sheet('glance');
    expect([same.get('A1')?.value, same.get('A2')?.value]).toEqual(['figure (kg)', '104']);
  });

  test('says plainly what it cannot hold', () => {
    const long = bookOf(
      { do: 'add-sheet', name: 'a', label: 'Notes', columns: [{ name: 'words', kind: 'text' }] },
      { do: 'add-rows', sheet: 'a', row: 0, count: 1 },
    );
    const [sheet] = long.outline().sheets;
    long.writePlanned({
      edit: {
        do: 'put-cells',
        sheet: sheet!.id,
        row: 0,
        columns: [sheet!.columns[0]!.id],
        cells: [['x'.repeat(32_768)]],
      },
      words: 'text',
    });
    const content = (session: Session) => session.ask((context) => exhaust(workbookContent(context, now)));
    expect(() => content(long)).toThrow(/Notes, words, row 1 has a text of 32,768 characters; .* 32,767/);
    expect(() => content(Session.create())).toThrow(/no sheet yet/);
    const tall = bookOf({ do: 'add-sheet', name: 'a', label: 'Tall', columns: [{ name: 'x' }] });
    tall.execute({ do: 'add-rows', sheet: 'a', row: 0, count: 1_048_576 });
    expect(tall.outline().sheets[0]!.rows).toBe(1_048_576);
    expect(() => content(tall)).toThrow(/Tall has 1,048,576 rows; .* 1,048,575 below its headings/);
  });
});

describe('names in an XLSX file', () => {
  test('sheets have at most 31 characters, none that is forbidden, and none twice in any case', () => {
    const names = sheetNames([
      'Roster',
      'roster',
      'a/b:c*d?e[f]',
      "'quoted'",
      'History',
      '',
      'x'.repeat(40),
      'x'.repeat(41),
    ]);
    expect(names).toEqual([
      'Roster',
      'roster 2',
      'a b c d e f',
      'quoted',
      'History 2',
      'Sheet',
      'x'.repeat(31),
      `${'x'.repeat(29)} 2`,
    ]);
  });

  test('a named cell keeps its name where it reads as no address', () => {
    expect(['target_lean', 'größe', 'max.lift'].filter(mayBeDefined)).toEqual([
      'target_lean',
      'größe',
      'max.lift',
    ]);
    expect(['r1c1', 'R', 'c', 'rc', 'leg1', 'A1', 'true', '1st', 'a b'].filter(mayBeDefined)).toEqual([]);
  });

  test('every function that a workbook file may have is a function of the language, and none of the domain', () => {
    expect(
      [...builtIns]
        .filter(([name]) => !functionNames().has(name) || registry.has(name))
        .map(([name]) => name),
    ).toEqual([]);
  });
});
