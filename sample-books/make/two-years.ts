import { bodyOf, taped, wallOf } from './bodies.ts';
import { type CsvCell, csvText, daysBetween, isoDay, plain } from './csv.ts';
import { Random, rounded } from './random.ts';

const from = '2023-10-02';
const to = '2025-09-28';
const pound = 0.45359237;

/** Weeks of a block: repetitions and rating of the top set; the fourth and the last are light. */
const block = [
  { reps: 8, rpe: 7.5 },
  { reps: 6, rpe: 8 },
  { reps: 5, rpe: 8.5 },
  { reps: 5, rpe: 6 },
  { reps: 4, rpe: 8 },
  { reps: 3, rpe: 8.5 },
  { reps: 1, rpe: 9 },
  { reps: 5, rpe: 6 },
];
/** Days without training: holidays, an illness. */
const away = [
  ['2023-12-22', '2024-01-03'],
  ['2024-08-05', '2024-08-18'],
  ['2025-02-10', '2025-02-26'],
  ['2025-07-28', '2025-08-10'],
] as const;

/** One lifter's app, two years exported: pounds, the month first, one line a piece of work, the session's rating with its last line. */
export function exportCsv(): string {
  const random = new Random(20231002);
  const rows: CsvCell[][] = [];
  // The best single, kg: up by a third in two years, less after each time away.
  let strength = 92;
  for (let at = 0; at <= daysBetween(from, to); at++) {
    const day = isoDay(from, at);
    const isAway = away.some(([first, last]) => day >= first && day <= last);
    strength += isAway ? -0.12 : 0.075 * (150 / strength - 0.75) * random.normal(1, 0.5);
    if (isAway || ![0, 3, 5].includes(at % 7) || random.chance(at % 7 === 5 ? 0.35 : 0.12)) continue;
    const { reps, rpe } = block[Math.floor(at / 7) % block.length]!;
    const other = at % 7 === 3 ? 'Front squat' : 'Paused squat';
    const felt = Math.min(10, Math.max(5.5, rounded(random.normal(rpe, 0.5), 0.5)));
    const rating = felt === 9.5 ? 9 : felt;
    const max = strength * random.normal(1, 0.012);
    const top = loadFor(max, reps, rating);
    const month = `${Number(day.slice(5, 7))}/${Number(day.slice(8))}/${day.slice(0, 4)}`;
    const exertion = Math.min(10, Math.max(3, Math.round(random.normal(rating - 0.8, 0.8))));
    const minutes = Math.max(40, rounded(random.normal(72, 9), 5));
    rows.push([month, 'Squat', 1, reps, top, rating, null, null]);
    rows.push([month, 'Squat', random.whole(2, 4), reps, rounded(top * 0.9, 5), null, null, null]);
    rows.push([month, other, 3, random.pick([3, 5, 6]), loadFor(max * 0.78, 8, 7), null, exertion, minutes]);
  }
  // As people write: a comma, a word for the load, a rating that nobody gave.
  rows[120]![5] = '7,5';
  rows[33]![4] = 'empty bar';
  rows[240]![5] = null;
  return csvText(
    [['Date', 'Exercise', 'Sets', 'Reps', 'Load (lb)', 'RPE', 'Session RPE', 'Minutes (min)'], ...rows],
    plain,
  );
}

/** Pounds for a set, to what plates can make. */
const loadFor = (max: number, reps: number, rating: number): number =>
  rounded(max / (1 + (reps + 10 - rating) / 30) / pound, 5);

/** Own measures by tape on two days: standing heights of the landmarks, foot, knee to wall, mass; cm and kg. */
export function measures(): readonly (readonly [label: string, day: string, ...numbers: number[]])[] {
  const random = new Random(4);
  const body = { ...bodyOf(random, 'female'), ankle: 31.5 };
  const knee = 6.3 + body.tibia;
  const heights = [knee + body.femur + body.trunk, knee + body.femur, knee, 6.3];
  const on = (label: string, day: string, ankle: number) =>
    [
      label,
      day,
      ...heights.map((height) => taped(random, height, 0.4)),
      taped(random, body.foot, 0.2),
      ...[ankle - 0.8, ankle + 0.8].map((side) => taped(random, wallOf(body, side), 0.4)),
      rounded(body.mass, 0.1),
    ] as const;
  return [
    on('First measuring', '2023-10-01', body.ankle),
    on('Two years on', '2025-09-27', body.ankle + 2.5),
  ];
}
