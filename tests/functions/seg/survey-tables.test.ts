import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ballAlongFoot } from '../../../functions/tables/foot.ts';
import {
  jointLineBelow,
  plausible,
  referenceFemur,
  referenceTibia,
  referenceTrunk,
  type SurveyMeasure,
  statureSegments,
  surveyMeasures,
  surveyNorm,
  surveyShare,
} from '../../../functions/tables/survey.ts';

// Gordon et al. 2014, NATICK/TR-15/007: the public files are read where they are beside the project.
const file = (sex: string) => new URL(`../../../../shared/data/ANSUR_II_${sex}_Public.csv`, import.meta.url);
const here = existsSync(file('MALE')) && existsSync(file('FEMALE'));
if (!here) console.warn('The survey files are not beside the project: the test of its tables is skipped.');

type Person = Readonly<Record<SurveyMeasure | 'ankle height' | 'ball/foot' | 'joint line', number>>;

/** Everybody of a file, lengths in cm. */
function people(sex: 'MALE' | 'FEMALE'): Person[] {
  const [heads, ...lines] = readFileSync(file(sex), 'latin1')
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => line.split(','));
  const at = (name: string) => heads!.indexOf(name);
  return lines.map((cells) => {
    const cm = (name: string) => Number(cells[at(name)]) / 10;
    const [shoulder, hip, knee] = [
      cm('acromialheight'),
      cm('trochanterionheight'),
      cm('lateralfemoralepicondyleheight'),
    ];
    const ankle = cm('lateralmalleolusheight');
    const [femur, tibia, trunk, foot] = [hip - knee, knee - ankle, shoulder - hip, cm('footlength')];
    const [stature, sitting] = [cm('stature'), cm('sittingheight')];
    return {
      stature,
      'sitting height': sitting,
      femur,
      tibia,
      trunk,
      foot,
      'femur/tibia': femur / tibia,
      'trunk/femur': trunk / femur,
      cormic: (100 * sitting) / stature,
      'ankle height': ankle,
      'ball/foot': cm('balloffootlength') / foot,
      'joint line': knee - cm('tibialheight'),
    };
  });
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const sd = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / (values.length - 1));
};
/** Half a unit of the last digit printed. */
const near = (value: number, printed: number, digits: number, what: string): void => {
  if (Math.abs(value - printed) > 0.5001 * 10 ** -digits)
    expect.fail(`${what}: ${value}, printed ${printed}`);
};

describe.skipIf(!here)('the numbers of the survey, worked out from its public files', () => {
  const groups = here ? ({ male: people('MALE'), female: people('FEMALE') } as const) : undefined;
  const sexes = ['male', 'female'] as const;

  test('its counts', () => {
    expect(groups!.male.length).toBe(4082);
    expect(groups!.female.length).toBe(1986);
  });

  test('mean and SD of every measure', () => {
    for (const sex of sexes)
      for (const measure of surveyMeasures) {
        const values = groups![sex].map((person) => person[measure]);
        const digits = measure === 'cormic' ? 2 : measure.includes('/') ? 4 : 3;
        near(mean(values), surveyNorm(measure, sex, 'mean').value, digits, `mean of ${measure}, ${sex}`);
        near(sd(values), surveyNorm(measure, sex, 'sd').value, digits, `SD of ${measure}, ${sex}`);
      }
  });

  test('mean fractions of stature', () => {
    for (const sex of sexes)
      for (const segment of statureSegments)
        near(
          mean(groups![sex].map((person) => person[segment] / person.stature)),
          surveyShare(segment, sex).value,
          4,
          `${segment}, ${sex}`,
        );
  });

  test('the reference build: shares of femur + tibia + trunk, mean of the sexes', () => {
    const share = (part: 'femur' | 'tibia' | 'trunk') =>
      mean(sexes.map((sex) => mean(groups![sex].map((p) => p[part] / (p.femur + p.tibia + p.trunk)))));
    near(share('femur'), referenceFemur.value, 4, 'femur');
    near(share('tibia'), referenceTibia.value, 4, 'tibia');
    near(share('trunk'), referenceTrunk.value, 4, 'trunk');
  });

  test('the ball of the foot, and the joint line of the knee', () => {
    near(
      mean(sexes.map((sex) => mean(groups![sex].map((person) => person['ball/foot'])))),
      ballAlongFoot.value,
      3,
      'ball of the foot',
    );
    for (const sex of sexes)
      near(
        mean(groups![sex].map((p) => p['joint line'])),
        jointLineBelow[sex].value,
        1,
        `joint line, ${sex}`,
      );
  });

  test('limits of plausible build: four SD on the wider side of the two sexes, and around everybody', () => {
    for (const [measure, limits] of [
      ['femur/tibia', plausible.femurTibia],
      ['trunk/femur', plausible.trunkFemur],
    ] as const) {
      const edge = (side: 1 | -1) =>
        sexes.map(
          (sex) => surveyNorm(measure, sex, 'mean').value + side * 4 * surveyNorm(measure, sex, 'sd').value,
        );
      near(Math.min(...edge(-1)), limits[0].value, 4, `lowest ${measure}`);
      near(Math.max(...edge(1)), limits[1].value, 4, `highest ${measure}`);
    }
    const sums = sexes.flatMap((sex) => groups![sex].map((p) => (p.femur + p.tibia + p.trunk) / p.stature));
    expect(Math.min(...sums)).toBeGreaterThan(plausible.sum[0].value);
    expect(Math.max(...sums)).toBeLessThan(plausible.sum[1].value);
  });
});
