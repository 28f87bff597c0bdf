import fc from 'fast-check';

/** Random formulas as people may type them: odd spacing, any case, needless parentheses. */
const blank = fc.constantFrom('', '', '', ' ', '  ', '\n');
const number = fc.oneof(
  fc.nat(1000).map(String),
  fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }).map((n) => String(n).replace('e+', 'e')),
);
const text = fc.string({ maxLength: 6 }).map((t) => `"${t.replaceAll('"', '""')}"`);
const name = fc.constantFrom('femur', 'tibia', 'Mass', 'target_lean', 'größe', 'load_kg');
const address = fc
  .tuple(
    fc.constantFrom('', '$'),
    fc.constantFrom('A', 'B', 'c', 'AA'),
    fc.constantFrom('', '$'),
    fc.integer({ min: 1, max: 12 }),
  )
  .map((parts) => parts.join(''));
const sheet = fc.constantFrom('', '', 'roster!', 'log!');
const reference = fc.oneof(
  name,
  fc.tuple(fc.constantFrom('roster', 'log'), name).map((p) => p.join('.')),
  fc.tuple(sheet, address).map((p) => p.join('')),
  fc.tuple(sheet, address, address).map(([s, a, b]) => `${s}${a}:${b}`),
  fc.tuple(fc.constant('#REF!'), name).map((p) => p.join('')),
);
const constant = fc.oneof(number, text, fc.constantFrom('TRUE', 'false', '#N/A', '-3', '50%'));
const row = fc.array(constant, { minLength: 2, maxLength: 2 }).map((r) => r.join(','));
const array = fc.array(row, { minLength: 1, maxLength: 3 }).map((rows) => `{${rows.join(';')}}`);
const operator = fc.constantFrom('+', '-', '*', '/', '^', '&', '=', '<>', '<', '<=', '>', '>=');

export const formulaText: fc.Arbitrary<string> = fc.letrec<{ e: string }>((tie) => ({
  e: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.oneof(constant, reference, reference, array),
    fc.tuple(tie('e'), blank, operator, blank, tie('e')).map((p) => p.join('')),
    fc.tuple(fc.constantFrom('-', '+'), tie('e')).map((p) => p.join('')),
    tie('e').map((e) => `${e}%`),
    fc.tuple(blank, tie('e'), blank).map(([a, e, b]) => `(${a}${e}${b})`),
    fc
      .tuple(
        fc.constantFrom('SUM', 'seg.ratio', 'IF'),
        fc.array(fc.oneof(tie('e'), fc.constant('')), { minLength: 2, maxLength: 3 }),
      )
      .map(([f, args]) => `${f}(${args.join(',')})`),
    tie('e').map((e) => `LET(x, ${e}, x + femur)`),
  ),
})).e;
