import { type Body, bodyOf, type Sex, taped, wallOf } from './bodies.ts';
import { type CsvCell, csvText, daysBetween, dottedDay, isoDay, plain, withCommas } from './csv.ts';
import { observedCsv } from './observed.ts';
import { Random, rounded } from './random.ts';

const names = [
  ...['Bram Oduya', 'Carla Nisse', 'Dario Welk', 'Edda Pires', 'Fynn Abara', 'Greta Solis'],
  ...['Hanno Reyes', 'Ines Kovar', 'Jonas Adeyo', 'Kaia Lindqvist', 'Lorin Maas', 'Mira Tanaka'],
  ...['Nils Okafor', 'Orla Vance', 'Pavel Drumm', 'Quinn Sato', 'Rasmus Ide', 'Selma Ortiz'],
  ...['Tariq Holm', 'Una Bellamy', 'Viggo Nash', 'Wanda Eriks', 'Yusuf Carrow', 'Aila Brandt'],
];
const testDays = ['2025-09-08', '2025-09-10', '2025-09-15', '2025-09-17'];
const weeks = 8;

interface Lifter {
  readonly name: string;
  readonly body: Body;
  readonly tested: string;
  /** Ankle ranges at the first test, deg, and what the block adds to them. */
  readonly ankles: readonly [left: number, right: number];
  readonly gains: readonly [left: number, right: number];
  /** Best single of the squat at the start, kg, and what a week adds to it, as a share. */
  readonly strength: number;
  readonly progress: number;
}

/** Measuring error of the tape at one test, cm: lengths, and knee to wall (Konor et al. 2012 print .4 to .6). */
const tapeError = 0.5;
const wallError = 0.5;

/** The screening opens on its first row: a lifter whose long thighs cost much and whom a heel lift helps. */
const FIRST = 12;

function lifters(): readonly Lifter[] {
  const random = new Random(20250908);
  const drawn = names.map((name, i): Lifter => {
    const sex: Sex = i % 2 === 0 ? 'male' : 'female';
    const body = bodyOf(random, sex);
    const sides = random.normal(0, 1.2);
    // Two thirds of the group work on the ankles, and those who are stiff gain the most.
    const works = random.chance(0.65);
    const gain = () =>
      works ? Math.max(0, random.normal(4.2 + (36 - body.ankle) * 0.25, 1.6)) : random.normal(0, 0.7);
    return {
      name,
      body,
      tested: testDays[Math.floor(i / 6)]!,
      ankles: [body.ankle - sides, body.ankle + sides],
      gains: [gain(), gain()],
      strength: body.mass * random.normal(sex === 'male' ? 1.55 : 1.2, 0.2),
      progress: random.normal(0.006, 0.004),
    };
  });
  const order = drawn.map((_, i) => (i === 0 ? FIRST : i === FIRST ? 0 : i));
  return order.map((from, i) => ({ ...drawn[from]!, name: drawn[i]!.name, tested: drawn[i]!.tested }));
}

/** The roster as the club's tablet exports it: a title, units in a line of their own, and two cells that are not as they should be. */
export function rosterCsv(): string {
  const random = new Random(1);
  const rows: CsvCell[][] = lifters().map(({ name, body, tested, ankles }) => [
    name,
    body.sex === 'male' ? 'M' : 'F',
    tested,
    ...[body.stature, body.femur, body.tibia, body.trunk, body.foot].map((length) =>
      taped(random, length, tapeError),
    ),
    ...ankles.map((ankle) => taped(random, wallOf(body, ankle), wallError)),
    rounded(body.mass, 0.1),
  ]);
  // Written by hand: a comma for the point, and a word where the tape should have spoken.
  rows[7]![10] = String(rows[7]![10]).replace('.', ',');
  rows[18]![9] = 'stiff';
  return csvText(
    [
      ['Quernhallow Barbell Circle: screening week'],
      [
        'Athlete',
        'Sex',
        'Tested',
        'Stature',
        'Femur',
        'Tibia',
        'Trunk',
        'Foot',
        'Knee to wall left',
        'Knee to wall right',
        'Body mass',
      ],
      ['', '', '', 'cm', 'cm', 'cm', 'cm', 'cm', 'cm', 'cm', 'kg'],
      ...rows,
    ],
    plain,
  );
}

/** What the tape said at the second look: the cell that held a word. */
export function mendedWall(): number {
  const { body, ankles } = lifters()[18]!;
  return rounded(wallOf(body, ankles[1]), 0.5);
}

/** Eight weeks later: the same test, one lifter away, one ill, two names written otherwise. */
export function retestCsv(): string {
  const random = new Random(2);
  const spelled: Readonly<Record<string, string>> = {
    'Carla Nisse': 'Carla Nise',
    'Jonas Adeyo': 'Adeyo, Jonas',
  };
  const rows = lifters().flatMap(({ name, body, tested, ankles, gains }): CsvCell[][] => {
    const walls = ankles.map((ankle, side) => taped(random, wallOf(body, ankle + gains[side]!), wallError));
    const mass = rounded(random.normal(body.mass, 0.9), 0.1);
    if (name === 'Nils Okafor') return [];
    const day = isoDay(tested, weeks * 7);
    if (name === 'Wanda Eriks') return [[name, day, 'ill', 'ill', null]];
    return [[spelled[name] ?? name, day, ...walls, mass]];
  });
  return csvText(
    [['Athlete', 'Retested', 'Knee to wall left (cm)', 'Knee to wall right (cm)', 'Body mass (kg)'], ...rows],
    plain,
  );
}

/** Lifters whose squats were filmed at both tests. */
const filmed = [0, 1, 3, 5, 6, 9, 11, 13, 15, 19];

/** Their digitised squats, as the page exports the sheet. */
export function observedSquatsCsv(): string {
  const all = lifters();
  return observedCsv(
    filmed.map((at) => {
      const { name, body, tested, ankles, gains } = all[at]!;
      const { femur, tibia, trunk, foot } = body;
      return {
        name,
        build: { femur, tibia, trunk, foot, ankle: Math.min(...ankles) },
        tested,
        later: Math.min(ankles[0] + gains[0], ankles[1] + gains[1]),
      };
    }),
  );
}

/** Repetitions of the top set by week of the block, and how near the limit it goes. */
const plan = [
  { reps: 8, rpe: 7.5 },
  { reps: 8, rpe: 8 },
  { reps: 6, rpe: 8 },
  { reps: 6, rpe: 8.5 },
  { reps: 5, rpe: 7 },
  { reps: 5, rpe: 8 },
  { reps: 4, rpe: 8.5 },
  { reps: 3, rpe: 9 },
];
const firstDay = '2025-09-15';
/** The club is closed for autumn. */
const closed = (day: string): boolean => day >= '2025-10-20' && day <= '2025-10-24';
export const lastDay = '2025-11-09';

/** The sessions of the block, exported with decimal commas and the day first. */
export function logCsv(): string {
  const random = new Random(3);
  const rows: (readonly [string, CsvCell[]])[] = [];
  for (const { name, strength, progress } of lifters())
    for (let at = 0; at <= daysBetween(firstDay, lastDay); at++) {
      const day = isoDay(firstDay, at);
      if (![0, 2, 4].includes(at % 7) || closed(day) || random.chance(0.13)) continue;
      const { reps, rpe } = plan[Math.floor(at / 7)]!;
      const heavy = at % 7 !== 2;
      const today = Math.min(10, Math.max(6, rounded(random.normal(heavy ? rpe : rpe - 1.5, 0.5), 0.5)));
      const felt = today === 9.5 ? 9 : today;
      const max = strength * (1 + (progress * at) / 7) * random.normal(1, 0.012);
      const load = rounded(max / (1 + (reps + 10 - felt) / 30), 2.5);
      const exertion = Math.min(
        10,
        Math.max(2, Math.round(random.normal(heavy ? felt - 1 : felt - 2.5, 0.8))),
      );
      const minutes = Math.max(35, rounded(random.normal(heavy ? 70 : 55, 8), 5));
      const spelled = name === 'Kaia Lindqvist' && random.chance(0.3) ? 'Kaia Lindquist' : name;
      rows.push([day, [spelled, dottedDay(day), exertion, minutes, load, reps, felt]]);
    }
  rows.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  const lines = rows.map(([, cells]) => cells);
  // A session that was cut short, and one that nobody wrote the load down for.
  lines[40]!.splice(3, 1, 'half');
  lines[97]!.splice(4, 3, null, null, null);
  return csvText(
    [
      ['Athlete', 'Day', 'Session RPE', 'Minutes (min)', 'Top set load (kg)', 'Top set reps', 'Top set RPE'],
      ...lines,
    ],
    withCommas,
  );
}
