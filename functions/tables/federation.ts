import { type Constant, constant, memory, published, type Source, secondary } from '../core/source.ts';

export type Sex = 'female' | 'male';

const coefficients = (prefix: string, source: Source, values: readonly number[]): readonly Constant[] =>
  values.map((value, power) => constant(`${prefix} ${'abcdef'[power]}`, value, '', source));
const limits = (prefix: string, source: Source, low: number, high: number): readonly [Constant, Constant] => [
  constant(`${prefix} lightest`, low, 'kg', source),
  constant(`${prefix} heaviest`, high, 'kg', source),
];

/** A score 500·total/polynomial of body mass, the mass held within limits. */
export interface Polynomial {
  readonly coefficients: readonly Constant[];
  readonly limits: readonly [Constant, Constant];
}

export const wilksSource = secondary(
  'Wilks formula, original constants, as five independent pages agree on them; coefficient .608589071906651 at 100 kg (M) reproduced',
);
export const wilks: Readonly<Record<Sex, Polynomial>> = {
  male: {
    coefficients: coefficients(
      'Wilks M',
      wilksSource,
      [-216.0475144, 16.2606339, -0.002388645, -0.00113732, 7.01863e-6, -1.291e-8],
    ),
    limits: limits('Wilks M', wilksSource, 40, 201.9),
  },
  female: {
    coefficients: coefficients(
      'Wilks F',
      wilksSource,
      [594.31747775582, -27.23842536447, 0.82112226871, -0.00930733913, 4.731582e-5, -9.054e-8],
    ),
    limits: limits('Wilks F', wilksSource, 26.51, 154.53),
  },
};

export const dotsSource = secondary('DOTS, BVDK 2019/2020, coefficients as public pages print them');
export const dots: Readonly<Record<Sex, Polynomial>> = {
  male: {
    coefficients: coefficients(
      'DOTS M',
      dotsSource,
      [-307.75076, 24.0900756, -0.1918759221, 0.0007391293, -0.000001093],
    ),
    limits: limits('DOTS M', dotsSource, 40, 210),
  },
  female: {
    coefficients: coefficients(
      'DOTS F',
      dotsSource,
      [-57.96288, 13.6175032, -0.1126655495, 0.0005158568, -0.0000010706],
    ),
    limits: limits('DOTS F', dotsSource, 40, 150),
  },
};

/** The score, and the body mass that went into it. */
export function polynomialScore(table: Polynomial, total: number, mass: number): number {
  const x = heldWithin(table, mass);
  const divisor = table.coefficients.reduceRight((sum, c) => sum * x + c.value, 0);
  return (500 * total) / divisor;
}
export const heldWithin = (table: Polynomial, mass: number): number =>
  Math.min(table.limits[1].value, Math.max(table.limits[0].value, mass));

export const glSource = secondary(
  'IPF GL coefficients, in force from 1 May 2020; the federation examples 112.85 and 96.78 reproduced',
);
export type Gear = 'classic' | 'equipped';
export type MeetEvent = 'full' | 'bench';
const gl = (name: string, a: number, b: number, c: number): readonly [Constant, Constant, Constant] => [
  constant(`GL ${name} A`, a, '', glSource),
  constant(`GL ${name} B`, b, '', glSource),
  constant(`GL ${name} C`, c, '1/kg', glSource),
];
export const goodLift: Readonly<
  Record<Sex, Record<Gear, Record<MeetEvent, readonly [Constant, Constant, Constant]>>>
> = {
  male: {
    classic: {
      full: gl('M classic full', 1199.72839, 1025.18162, 0.00921),
      bench: gl('M classic bench', 320.98041, 281.40258, 0.01008),
    },
    equipped: {
      full: gl('M equipped full', 1236.25115, 1449.21864, 0.01644),
      bench: gl('M equipped bench', 381.22073, 733.79378, 0.02398),
    },
  },
  female: {
    classic: {
      full: gl('F classic full', 610.32796, 1045.59282, 0.03048),
      bench: gl('F classic bench', 142.40398, 442.52671, 0.04724),
    },
    equipped: {
      full: gl('F equipped full', 758.63878, 949.31382, 0.02435),
      bench: gl('F equipped bench', 221.82209, 357.00377, 0.02937),
    },
  },
};
export const glLightest = constant('GL lightest', 35, 'kg', glSource);

export const cycles = ['2021', '2001', '2017', '2025'] as const;
export type Cycle = (typeof cycles)[number];
export const sinclairSources: Readonly<Record<Cycle, Source>> = {
  '2001': published('IWF Sinclair coefficients 2001–2004, with the example 83.5 kg, 390 kg → 459.028'),
  '2017': secondary('IWF Sinclair coefficients 2017–2020; the federation sheet was not read'),
  '2021': secondary('IWF Sinclair coefficients 2021–2024; the federation sheet was not read'),
  '2025': memory('IWF Sinclair coefficients 2025–2028: confirm against the federation sheet'),
};
const sinclairOf = (cycle: Cycle, sex: Sex, a: number, b: number): readonly [Constant, Constant] => [
  constant(`Sinclair ${cycle} ${sex} A`, a, '', sinclairSources[cycle]),
  constant(`Sinclair ${cycle} ${sex} b`, b, 'kg', sinclairSources[cycle]),
];
export const sinclair: Readonly<Record<Cycle, Record<Sex, readonly [Constant, Constant]>>> = {
  '2001': {
    male: sinclairOf('2001', 'male', 0.938573813, 157.141),
    female: sinclairOf('2001', 'female', 1.005487664, 112.811),
  },
  '2017': {
    male: sinclairOf('2017', 'male', 0.75194503, 175.508),
    female: sinclairOf('2017', 'female', 0.783497476, 153.655),
  },
  '2021': {
    male: sinclairOf('2021', 'male', 0.722762521, 193.609),
    female: sinclairOf('2021', 'female', 0.787004341, 153.757),
  },
  '2025': {
    male: sinclairOf('2025', 'male', 0.700767819, 201.159),
    female: sinclairOf('2025', 'female', 0.674107991, 163.918),
  },
};
