import { bodyOf, type Sex, taped, wallOf } from './bodies.ts';
import { type CsvCell, csvText, plain, withCommas } from './csv.ts';
import { Random, rounded } from './random.ts';

const count = 40;
/** Measuring error of one trial, cm; how far a tester is off for one person, and tester B for everybody. */
const trialError = 0.45;
const personByTester = 0.35;
const testerB = 0.3;

const rad = (deg: number): number => (deg * Math.PI) / 180;

interface Person {
  readonly id: string;
  readonly sex: Sex;
  readonly age: number;
  readonly body: ReturnType<typeof bodyOf>;
  /** Lean of a squat to parallel, deg, as a side view shows it. */
  readonly lean: number;
}

/** The lean follows from build and ankle by a line with scatter: people do not squat as a model does. */
function people(): readonly Person[] {
  const random = new Random(40);
  return Array.from({ length: count }, (_, i) => {
    const sex: Sex = i % 2 === 0 ? 'female' : 'male';
    const body = bodyOf(random, sex);
    const lean =
      31 +
      38 * (body.femur / body.tibia - 0.96) -
      12 * (body.trunk / body.femur - 1.31) -
      0.75 * (body.ankle - 36.5) +
      random.normal(2, 3.2);
    return { id: `P${String(i + 1).padStart(2, '0')}`, sex, age: random.whole(18, 39), body, lean };
  });
}

/** Two testers, three trials each, knee to wall in cm; two trials were missed. */
export function trialsCsv(): string {
  const random = new Random(41);
  const rows = people().map(({ id, body }): CsvCell[] => {
    const wall = wallOf(body, body.ankle);
    const tester = (bias: number) => {
      const off = wall + bias + random.normal(0, personByTester);
      return [1, 2, 3].map(() => taped(random, off, trialError, 0.1));
    };
    return [id, ...tester(0), ...tester(testerB)];
  });
  rows[11]![3] = 'NA';
  rows[29]![6] = null;
  return csvText(
    [['Person', 'A 1', 'A 2', 'A 3', 'B 1', 'B 2', 'B 3'], ['', 'cm', 'cm', 'cm', 'cm', 'cm', 'cm'], ...rows],
    plain,
  );
}

/** Lengths, and hip and shoulder digitised on a photograph from the side; one photograph is missing. Decimal commas. */
export function peopleCsv(): string {
  const random = new Random(42);
  const rows = people().map(({ id, sex, age, body, lean }): CsvCell[] => {
    const scale = random.normal(6, 0.3);
    const [hipX, hipY] = [random.whole(380, 460), random.whole(300, 360)];
    const trunk = body.trunk * scale;
    return [
      id,
      sex === 'female' ? 'F' : 'M',
      age,
      ...[body.stature, body.femur, body.tibia, body.trunk, body.foot].map((length) =>
        taped(random, length, 0.4, 0.1),
      ),
      rounded(body.mass, 0.1),
      hipX,
      hipY,
      Math.round(hipX + trunk * Math.sin(rad(lean))),
      Math.round(hipY + trunk * Math.cos(rad(lean))),
    ];
  });
  rows[22]!.splice(9, 4, 'NA', 'NA', 'NA', 'NA');
  return csvText(
    [
      [
        ...['Person', 'Sex', 'Age', 'Stature (cm)', 'Femur (cm)', 'Tibia (cm)', 'Trunk (cm)', 'Foot (cm)'],
        ...['Body mass (kg)', 'Hip x', 'Hip y', 'Shoulder x', 'Shoulder y'],
      ],
      ...rows,
    ],
    withCommas,
  );
}
