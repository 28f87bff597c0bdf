import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { circles, imports, layerOf, roomOf, root, sources } from './source-files.ts';

/** What each layer may import; a layer may also import itself. */
const allowed: Record<string, readonly string[]> = {
  functions: [],
  guides: [],
  units: [],
  book: ['units'],
  calc: ['functions', 'book', 'units'],
  intake: ['book', 'units'],
  store: ['book', 'units'],
  session: ['functions', 'units', 'book', 'calc', 'intake', 'store'],
  worker: ['functions', 'units', 'book', 'calc', 'intake', 'store', 'session'],
  app: ['functions', 'guides', 'units', 'book', 'calc', 'intake', 'store', 'session', 'worker'],
  cli: ['functions', 'guides', 'units', 'book', 'calc', 'intake', 'store', 'session'],
};

/** Imports between rooms of one layer that still close a circle. */
const turningBack: Record<string, readonly string[]> = {
  calc: ['src/calc/builtins → src/calc/plan', 'src/calc/ranges → src/calc/plan'],
  app: [
    'src/app/dialogues → src/app/commands',
    'src/app/grid → src/app/marks',
    'src/app/guides → src/app/books',
    'src/app/guides → src/app/commands',
  ],
};

describe('the house', () => {
  test.each(Object.keys(allowed))('%s imports only the layers below it', (layer) => {
    const wrong = imports.filter(({ from, to }) => {
      const target = layerOf(to);
      return (
        layerOf(from) === layer &&
        target !== undefined &&
        target !== layer &&
        !allowed[layer]!.includes(target)
      );
    });
    expect(wrong).toEqual([]);
  });

  test('every source file stands in a layer', () => {
    expect(sources.filter((file) => !(layerOf(file)! in allowed))).toEqual([]);
  });

  test('every file of src opens with what it is for: in its first line, or at its first definition', () => {
    const imported = /^(import\s[^;]*?;\n|import '[^']*';\n|\n)*/;
    const silent = sources.filter((file) => {
      const text = readFileSync(join(root, file), 'utf8');
      return (
        file.startsWith('src/') && !/^\s*\/[/*]/.test(text.replace(imported, '')) && !/^\s*\/[/*]/.test(text)
      );
    });
    expect(silent.filter((file) => !file.endsWith('.d.ts'))).toEqual([]);
  });

  /** Doors, and a definition of the domain, which is named as its function: LEAN.ERROR and FIT.ERROR are in two families. */
  const mayRepeat = /(^|\/)(index|api)\.ts$|^functions\//;

  test('no two files of a layer have one name', () => {
    const seen = new Map<string, string>();
    const twice = sources.flatMap((file) => {
      if (mayRepeat.test(file)) return [];
      const key = `${layerOf(file)} ${file.slice(file.lastIndexOf('/') + 1).replace(/\.tsx?$/, '')}`;
      const other = seen.get(key.toLowerCase());
      seen.set(key.toLowerCase(), file);
      return other === undefined ? [] : [`${other} and ${file}`];
    });
    expect(twice).toEqual([]);
  });

  const between = imports.filter(({ to }) => layerOf(to) !== undefined);

  test('no circle runs between files, types included', () => {
    expect(between.length).toBeGreaterThan(1000);
    expect(circles(between.map(({ from, to }) => [from, to]))).toEqual([]);
  });

  test('a circle is found wherever it begins', () => {
    expect(
      circles([
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'b'],
        ['c', 'd'],
        ['e', 'e'],
      ]),
    ).toEqual([['b', 'c']]);
  });

  test.each(Object.keys(allowed))('no circle runs between the rooms of %s, but for those listed', (layer) => {
    const known = turningBack[layer] ?? [];
    const rooms = new Map(
      between
        .filter(({ from, to }) => layerOf(from) === layer && layerOf(to) === layer)
        .map(({ from, to }) => [`${roomOf(from)} → ${roomOf(to)}`, [roomOf(from), roomOf(to)] as const]),
    );
    const straight = [...rooms].filter(([way]) => !known.includes(way)).map(([, edge]) => edge);
    expect(circles(straight)).toEqual([]);
    // The list only shrinks: a way that is gone, or closes no circle any more, comes off it.
    const idle = known.filter((way) => {
      const edge = rooms.get(way);
      return !edge || circles([...straight, edge]).length === 0;
    });
    expect(idle).toEqual([]);
  });

  /** Rooms that are entered by their doors, by whom: everybody outside the room, or outside its layer. */
  const doors: Record<string, 'room' | 'layer'> = {
    'src/intake/cells': 'room',
    'src/intake/detect': 'room',
    'src/intake/import-settings': 'room',
    'src/intake/merge': 'room',
    'src/intake/people': 'room',
    'src/intake/place': 'room',
    'src/intake/read': 'room',
    'src/intake/sentences': 'room',
    'src/guides': 'room',
    'src/calc/a1': 'layer',
    'src/calc/builtins': 'layer',
    'src/calc/cell-engine': 'layer',
    'src/calc/cells': 'layer',
    'src/calc/dimensions': 'layer',
    'src/calc/graph': 'layer',
    'src/calc/language': 'layer',
    'src/calc/plan': 'layer',
    'src/calc/ranges': 'layer',
    'src/calc/values': 'layer',
  };
  test('a room is entered by its door, index.ts or api.ts, types included', () => {
    const wrong = between.filter(({ from, to }) => {
      const [room, by] = Object.entries(doors).find(([name]) => to.startsWith(`${name}/`)) ?? [];
      if (room === undefined || /^(index|api)\.ts$/.test(to.slice(room.length + 1))) return false;
      return by === 'layer' ? layerOf(from) !== layerOf(to) : !from.startsWith(`${room}/`);
    });
    expect(wrong).toEqual([]);
    // Every room of the import and of the calculation has a line above.
    const rooms = sources.map(roomOf).filter((room) => /^src\/(calc|intake)\/[a-z0-9-]+$/.test(room));
    expect([...new Set(rooms)].filter((room) => !(room in doors))).toEqual([]);
  });

  const homes: Record<string, string> = {
    hyperformula: 'src/calc/',
    numfmt: 'src/calc/cell-engine/',
    papaparse: 'src/intake/',
    chardet: 'src/intake/',
    fflate: 'src/intake/read/workbook/',
    saxes: 'src/intake/read/workbook/',
    hucre: 'src/session/xlsx/',
    handsontable: 'src/app/grid/',
    idb: 'src/store/',
    commander: 'src/cli/',
    preact: 'src/app/',
  };
  test.each(Object.entries(homes))('%s is known in one place only: %s', (name, home) => {
    const wrong = imports.filter(
      ({ from, to }) => (to === name || to.startsWith(`${name}/`)) && !from.startsWith(home),
    );
    expect(wrong).toEqual([]);
  });

  test('functions use no package but statistics and linear algebra', () => {
    const packages = imports.filter(
      ({ from, to }) => from.startsWith('functions/') && !to.startsWith('functions/'),
    );
    expect(packages.filter(({ to }) => !/^(@stdlib\/|ml-matrix$|simple-statistics$)/.test(to))).toEqual([]);
  });

  /** Where the platform’s own may stand: in what is drawn or pointed at, a last digit is far below a pixel. */
  const drawing = ['src/session/figure/drawing/', 'src/app/charts/', 'src/app/picture/'];

  test('no code but what draws uses the platform’s own exp, log, powers and angles, whose last digits differ between engines', () => {
    // A power of two with a whole exponent is exact everywhere.
    const own =
      /\bMath\.(exp|expm1|log|log2|log10|log1p|pow|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|asinh|acosh|atanh|hypot|cbrt)\b|(?<!\b2) \*\*=? /;
    const using = sources.filter((file) => own.test(withoutComments(readFileSync(join(root, file), 'utf8'))));
    expect(sources.length).toBeGreaterThan(900);
    expect(using.filter((file) => !drawing.some((room) => file.startsWith(room)))).toEqual([]);
    // The list only shrinks.
    expect(drawing.filter((room) => !using.some((file) => file.startsWith(room)))).toEqual([]);
  });

  test('what runs headless never touches the DOM', () => {
    const headless = sources.filter((file) => !/^src\/(app|worker)\//.test(file));
    const dom =
      /\b(document|HTMLElement|navigator|localStorage|sessionStorage)\s*[.(]|\bwindow\.(document|location|navigator|addEventListener|\w+Storage)\b/;
    const wrong = headless.filter((file) =>
      dom.test(withoutPaths(withoutComments(readFileSync(join(root, file), 'utf8')))),
    );
    expect(wrong.filter((file) => !file.startsWith('src/store/'))).toEqual([]);
  });

  /** What asks for files, and nothing but files of the page itself: sample books, templates and the guides’ tables, and the service worker for its list. */
  const asks = ['src/app/books/bundled.ts', 'src/app/offline/service-worker.ts'];

  test('no code makes a network request, but for files of the page itself in two places, and none is made from text', () => {
    const using = (words: RegExp): string[] =>
      sources.filter((file) => words.test(withoutComments(readFileSync(join(root, file), 'utf8'))));
    expect(
      using(
        /\b(XMLHttpRequest|WebSocket|WebTransport|RTCPeerConnection|EventSource|sendBeacon|importScripts)\b|\beval\(|new Function\(|dangerouslySetInnerHTML|\.(inner|outer)HTML\s*=|insertAdjacentHTML|document\.write/,
      ),
    ).toEqual([]);
    expect(
      using(
        /(?<![.\w])fetch\s*\(|\b(globalThis|window|self|worker)\.fetch\b|from 'node:(https?|net|tls|dgram|http2)'/,
      ).sort(),
    ).toEqual(asks);
  });

  test('no test has a time limit of its own: the limits for all are in vitest.config.ts and tests/browser/browser.ts', () => {
    const own =
      /\b(timeout|interval):\s*[\d_]+|\bsetDefault(Navigation)?Timeout\(|^\s*\}, [\d_]+\);$|\bsetConfig\(/m;
    const tests = readdirSync(import.meta.dirname, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
      .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
      .filter((file) => !file.startsWith('tests/bench/') && file !== 'tests/browser/browser.ts');
    expect(tests.length).toBeGreaterThan(100);
    const wrong = tests.filter((file) => own.test(withoutComments(readFileSync(join(root, file), 'utf8'))));
    expect(wrong).toEqual([]);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/.*$/gm, '$1');
}

/** Without the names of imported files, which may say anything. */
const withoutPaths = (text: string): string => text.replace(/(from|import\()\s*'[^']*'/g, '');
