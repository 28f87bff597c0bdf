import { defineFunction, type Step } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { option } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { zOf } from '../statistics/distributions.ts';
import { type Retest, type RetestWord, retests, retestWords } from '../tables/retest.ts';

const ROOT_TWO = Math.sqrt(2);
const factor = (): number => zOf(0.95) * ROOT_TWO;

const find = (test: RetestWord): Retest => retests[test];

/** The standard error: as published, or from the change where two occasions were compared. */
function semOf(test: RetestWord): number | undefined {
  const { sem, mdc } = find(test);
  if (sem) return sem.value;
  // a difference between sides is one measurement, and its error was not published
  return test === 'wall sides' || !mdc ? undefined : mdc.value / factor();
}

function mdcOf(test: RetestWord): number {
  const { sem, mdc } = find(test);
  return mdc ? mdc.value : sem!.value * factor();
}

/** TEST.PUBLISHED(test, what): a number in the test's unit, or a word. @throws nothing; what is not published #N/A. */
export default defineFunction({
  name: 'TEST.PUBLISHED',
  family: 'reliability',
  summary:
    'Published reliability of an ankle test: standard error, minimal detectable change, unit or source.',
  searchWords: [
    'measurement error',
    'MDC',
    'SEM',
    'knee to wall',
    'weight-bearing lunge',
    'retest',
    'threshold',
  ],
  parameters: [
    option('test', retestWords, 'which test: see the notes'),
    option(
      'what',
      ['sem', 'mdc', 'unit', 'source'],
      'standard error, minimal detectable change (95 %), unit, or source',
    ),
  ],
  result: { is: 'number or text', unit: '', about: 'a figure in the unit that "unit" gives, or a text' },
  rule: 'the published figure; where only one of two is published, MDC = z·√2·SEM with z the normal quantile of 95 %',
  sources: [
    find('wall').source,
    find('wall mean').source,
    find('wall sides').source,
    find('inclinometer').source,
    find('goniometer').source,
    definition('MDC = z·√2·SEM'),
  ],
  constants: Object.values<Retest>(retests).flatMap(({ sem, mdc }) => [
    ...(sem ? [sem] : []),
    ...(mdc ? [mdc] : []),
  ]),
  cautions: [
    'For people, raters and devices like those of the study. Your own repeated trials are better: TEST.SEM.TABLE.',
    'A change beyond it is more than error. Training need not have caused it.',
  ],
  notes: [
    ...retestWords.map((word) => `"${word}": ${find(word).about}.`),
    '"wall mean", "inclinometer" and "goniometer" take the middle of the published range (SEM .4 to .6 cm and MDC 1.1 to 1.5 cm; 1.3 to 1.4 deg; 1.8 to 2.8 deg).',
    'For a retest on another day take "wall": errors within one session are smaller.',
  ],
  examples: [
    { formula: '=TEST.PUBLISHED("wall", "mdc")', gives: 1.9 },
    { formula: '=TEST.PUBLISHED("wall", "sem")', gives: 0.6855 },
    { formula: '=TEST.PUBLISHED("inclinometer", "mdc")', gives: 3.742 },
    { formula: '=TEST.PUBLISHED("wall sides", "sem")', gives: '#N/A', says: 'not published' },
    { formula: '=TEST.PUBLISHED("wall", "unit")', gives: 'cm' },
  ],
  seeAlso: ['TEST.SEM.TABLE', 'TEST.MDC', 'TEST.CHANGE', 'TEST.SIDES'],
  typical: ['wall', 'mdc'],
  compute: (test, what) => {
    if (what === 'unit') return find(test).unit;
    if (what === 'source') return find(test).source.citation;
    if (what === 'mdc') return mdcOf(test);
    return (
      semOf(test) ??
      issue('#N/A', 'not-published', {
        parameter: 'what',
        received: what,
        expected: '"mdc", "unit" or "source"',
        details: { test },
      })
    );
  },
  steps: (test): Step[] => {
    const { about, unit, source } = find(test);
    const sem = semOf(test);
    return [
      { name: 'test', value: about, unit: '' },
      { name: 'standard error', symbol: 'SEM', value: sem ?? 'not published', unit },
      { name: 'minimal detectable change', symbol: 'MDC', rule: 'z·√2·SEM', value: mdcOf(test), unit },
      { name: 'source', value: `${source.citation} (${source.status})`, unit: '' },
    ];
  },
});
