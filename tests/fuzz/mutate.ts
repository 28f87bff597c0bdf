/** A stream of random numbers that a seed fixes (mulberry32: public domain, T. Ettinger 2017). */
export class Chance {
  private state: number;
  constructor(seed: number) {
    this.state = seed >>> 0;
  }
  /** A whole number from 0 to `below` − 1. */
  n(below: number): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * below);
  }
  of<T>(list: readonly T[]): T {
    return list[this.n(list.length)]!;
  }
}

/** Texts that have broken programs before: markup, formulas, links, odd characters, odd numbers. */
export const nasty: readonly string[] = [
  '=1+1',
  '=cmd|" /C calc"!A0',
  '@SUM(1)',
  '+1+1',
  "-2+3+cmd|' /C calc'!D2",
  '\t=1',
  '\r=1',
  "'=1",
  '＝1',
  '=HYPERLINK("javascript:alert(1)","x")',
  'javascript:alert(1)',
  '<img src=x onerror=alert(1)>',
  '<script>alert(1)</script>',
  '"><svg onload=alert(1)>',
  '{{constructor.constructor("alert(1)")()}}',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a text that looks like a template, on purpose
  '${7*7}',
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '../../etc/passwd',
  'CON',
  '\u0000',
  '\ufeff',
  '\u202e',
  '\ud800',
  '\udfff',
  '\u2028',
  '💪🏋️',
  'é'.normalize('NFD'),
  'İ',
  'ß',
  '١٢٣',
  '1e999',
  '-1e-999',
  '0x1F',
  '1_000',
  '1,5',
  '.',
  '-',
  'NaN',
  'Infinity',
  '9007199254740993',
  '9'.repeat(400),
  'a'.repeat(5_000),
  '('.repeat(300),
  '"'.repeat(51),
  '{"a":'.repeat(100),
  '*'.repeat(40),
  '0000-00-00',
  '9999999-12-31',
  '31.02.2024',
  '99:99:99',
  '\r\n',
  '\n\n\n',
  ',,,,,,',
  ';;;',
  '\t\t',
  '""',
  '"',
  '%00',
  '#REF!',
  'A1',
  'XFD1048576',
  '$A$0',
];

/** A text changed in a few places: cut, doubled, put together with another, with something nasty in it. */
export function mutate(text: string, others: readonly string[], chance: Chance): string {
  let out = text;
  for (let times = chance.of([1, 1, 1, 2, 4]); times > 0; times--) {
    const at = chance.n(out.length + 1);
    const length = chance.n(chance.n(8) === 0 ? 400 : 12);
    switch (chance.n(9)) {
      case 0:
        out = out.slice(0, at) + out.slice(at + length);
        break;
      case 1:
        out = out.slice(0, at) + chance.of(nasty) + out.slice(at);
        break;
      case 2:
        out = out.slice(0, at) + chance.of(nasty) + out.slice(at + length);
        break;
      case 3:
        out = out.slice(0, at) + out.slice(at, at + length).repeat(1 + chance.n(20)) + out.slice(at);
        break;
      case 4: {
        const other = chance.of(others);
        const from = chance.n(other.length + 1);
        out = out.slice(0, at) + other.slice(from, from + 1 + chance.n(200)) + out.slice(at);
        break;
      }
      case 5:
        out =
          out.slice(0, at) +
          String.fromCharCode(chance.n(chance.n(3) === 0 ? 65_536 : 128)) +
          out.slice(at + 1);
        break;
      case 6:
        out = out.slice(0, at);
        break;
      case 7:
        out = out.slice(at) + out.slice(0, at);
        break;
      default: {
        const to = chance.n(out.length + 1);
        out = out.slice(0, at) + out.slice(to, to + length) + out.slice(at);
      }
    }
    if (out.length > 400_000) out = out.slice(0, 400_000);
  }
  return out;
}

/** Bytes changed in a few places. */
export function mutateBytes(bytes: Uint8Array, chance: Chance): Uint8Array {
  const out = bytes.slice();
  for (let times = chance.n(4); times > 0 && out.length > 0; times--) {
    const at = chance.n(out.length);
    if (chance.n(3) === 0) out[at] = chance.n(256);
    else if (chance.n(2) === 0) out[at]! ^= 1 << chance.n(8);
    else out.copyWithin(at, chance.n(out.length), chance.n(out.length));
  }
  return chance.n(6) === 0 ? out.slice(0, chance.n(out.length + 1)) : out;
}

/** JSON with some of its values replaced by others that may stand nowhere, or only elsewhere. */
export function mutateJson(value: unknown, chance: Chance, odds = 40): unknown {
  if (chance.n(odds) === 0) return strange(chance);
  if (Array.isArray(value)) {
    const list = value.map((item: unknown) => mutateJson(item, chance, odds));
    if (chance.n(odds) === 0) list.push(strange(chance));
    if (chance.n(odds) === 0 && list.length > 0) list.push(list[chance.n(list.length)]);
    return list;
  }
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, item]): [string, unknown] => [
    chance.n(odds * 3) === 0 ? chance.of(nasty) : key,
    mutateJson(item, chance, odds),
  ]);
  if (chance.n(odds) === 0) entries.push([chance.of(nasty), strange(chance)]);
  return Object.fromEntries(chance.n(odds) === 0 ? entries.slice(1) : entries);
}

function strange(chance: Chance): unknown {
  return chance.of<unknown>([
    null,
    true,
    -1,
    0.5,
    1e9,
    1e308,
    2_000_000,
    2_000_001,
    [],
    {},
    [[]],
    [null],
    { formula: '1+1' },
    { formula: 'NEVER(' },
    { formula: '('.repeat(2_000) },
    { held: 'x', reason: 'y' },
    { held: 'x' },
    { date: '2024-02-30' },
    { date: 1e12 },
    { text: '=1' },
    JSON.parse('{"__proto__": {"polluted": true}}'),
    JSON.parse('{"constructor": {"prototype": {"polluted": true}}}'),
    JSON.parse(`${'['.repeat(200)}${']'.repeat(200)}`),
    chance.of(nasty),
    chance.of(nasty),
  ]);
}
