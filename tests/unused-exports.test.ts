/** What a source file exports, another source file uses; what only tests use is named here, and the list only shrinks. */
import { expect, test } from 'vitest';
import { unusedExports } from './unused-exports.ts';

const known = [
  'functions/core/invoke.ts run',
  'functions/posture/angle.ts acos',
  'functions/registry.ts definitionFiles',
  'functions/statistics/agreement.ts agreement',
  'functions/statistics/describe.ts median',
  'functions/tables/parameters.ts placement',
  'functions/tables/repetitions.ts lineOf',
  'src/app/picture/medium.ts sizeOf',
  'src/app/print/lay-out.ts paper',
  'src/app/state/clipboard.ts textsOf',
  'src/book/json.ts DEEPEST',
  'src/book/names.ts LONGEST_NAME',
  'src/calc/builtins/own/reading.ts outside',
  'src/calc/cell-engine/own-bodies.ts ownBodies',
  'src/calc/language/print.ts print',
  'src/calc/sentences.ts calcSentences',
  'src/intake/detect/look.ts Tally',
  'src/intake/read/workbook/formats.ts useOfCode',
  'src/intake/sentences/index.ts sentences',
  'src/session/charts/drawing/lean-parts-drawing.ts segmentsOf',
  'src/session/figure/drawing/geometry.ts spot',
  'src/session/figure/drawing/loads-drawing.ts DEGREES_PER_NM',
  'src/session/figure/explained-words.ts fractionInWords',
  'src/session/figure/explained.ts seenIn',
  'src/session/figure/explained.ts wholeDegrees',
  'src/session/handouts/handout-settings.ts papers',
  'src/session/working/working-calls.ts stepsOf',
  'src/store/codec.ts DecodeError',
  'src/store/persist.ts room',
  'src/store/seal.ts digest',
  'src/units/unit.ts displayUnits',
];

test('nothing is exported that no other source file uses, but for what is listed', () => {
  expect(unusedExports()).toEqual(known);
});
