/** What a source file exports, another source file uses; what only tests use is named here, and the list only shrinks. */
import { expect, test } from 'vitest';
import { unusedExports } from './unused-exports.ts';

const known = [
  'functions/core/invoke.ts run',
  'functions/registry.ts definitionFiles',
  'functions/statistics/describe.ts median',
  'src/app/print/lay-out.ts paper',
  'src/book/names.ts LONGEST_NAME',
  'src/calc/cell-engine/own-bodies.ts ownBodies',
  'src/calc/language/print.ts print',
  'src/calc/sentences.ts calcSentences',
  'src/intake/read/workbook/formats.ts useOfCode',
  'src/intake/sentences/index.ts sentences',
  'src/session/charts/drawing/lean-parts-drawing.ts segmentsOf',
  'src/session/figure/drawing/loads-drawing.ts DEGREES_PER_NM',
  'src/session/figure/explained-words.ts fractionInWords',
  'src/session/figure/explained.ts wholeDegrees',
  'src/store/codec.ts DecodeError',
  'src/units/unit.ts displayUnits',
];

test('nothing is exported that no other source file uses, but for what is listed', () => {
  expect(unusedExports()).toEqual(known);
});
