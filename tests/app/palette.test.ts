import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const css = readFileSync('src/app/theme/tokens.css', 'utf8');
const pair = (name: string): readonly [light: string, dark: string] => {
  const found = new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(css);
  if (!found) throw new Error(`tokens.css has no --${name}`);
  return [found[1]!, found[2]!];
};

type Three = readonly [number, number, number];
type Matrix = readonly [Three, Three, Three];

/** What is left of a colour in full colour-blindness: Machado, Oliveira & Fernandes 2009, IEEE TVCG 15:1291–1298, severity 1.0, on linear RGB. */
const sights: Readonly<Record<string, Matrix>> = {
  'all cones': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const times = (matrix: Matrix, [r, g, b]: Three): Three =>
  matrix.map(([x, y, z]) => Math.min(1, Math.max(0, x * r + y * g + z * b))) as unknown as Three;
/** sRGB to linear RGB, IEC 61966-2-1. */
const linear = (hex: string): Three =>
  [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as unknown as Three;
const luminance = ([r, g, b]: Three): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
/** CIELAB of 1976, white D65 (CIE 15). */
function lab([r, g, b]: Three): Three {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
  const y = f(luminance([r, g, b]));
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const colours = Array.from({ length: 6 }, (_, index) => pair(`chart-${index + 1}`));
const sheet = pair('sheet');

describe.each([
  ['light', 0],
  ['dark', 1],
] as const)('the colours of charts, %s', (_theme, at) => {
  // Two patches beside each other are told apart from about 2.3 on (Mahy 1994, Color Res Appl 19:105–121); marks that are
  // small and apart need far more: 20, common practice, no published source.
  test.each(Object.keys(sights))('are told apart with %s', (sight) => {
    const seen = colours.map((colour) => lab(times(sights[sight]!, linear(colour[at]))));
    seen.forEach((one, i) => {
      for (const other of seen.slice(i + 1))
        expect(Math.hypot(...one.map((part, k) => part - other[k]!))).toBeGreaterThan(20);
    });
  });

  test('stand out from the sheet as WCAG 2.2 success criterion 1.4.11 asks: 3 : 1', () => {
    const ground = luminance(linear(sheet[at]));
    for (const colour of [...colours, pair('chart-quiet')]) {
      const own = luminance(linear(colour[at]));
      const ratio = (Math.max(own, ground) + 0.05) / (Math.min(own, ground) + 0.05);
      expect(ratio).toBeGreaterThanOrEqual(3);
    }
  });
});
