import { isIssue } from '../../functions/core/issue.ts';
import {
  type FigurePoints,
  figureOf,
  figureWith,
  type Lifter,
  type Point,
} from '../../functions/posture/figure.ts';
import { type CsvCell, csvText, isoDay, plain } from './csv.ts';
import { Random, rounded } from './random.ts';

/**
 * Squats of the invented lifters as somebody would digitise them: postures of the program's own model, with a lean and an
 * ankle use that are made up, seen through a pinhole camera and clicked with an error. No picture of anybody exists.
 */

/** What a squat is made up from; lengths cm, angles deg. */
export interface Observable {
  readonly name: string;
  readonly build: Omit<Lifter, 'lift' | 'depth' | 'placement'>;
  /** Day of the first test, ISO. */
  readonly tested: string;
  /** Ankle range at the second look, deg. */
  readonly later: number;
}

/** A phone on a stand: how far from the lifter, how high, turned clockwise; cm and deg. */
interface Camera {
  readonly away: number;
  readonly high: number;
  readonly roll: number;
  readonly looks: 'right' | 'left';
}
/** Width and height of the picture and the distance of its plane, pixels. */
const [WIDTH, HEIGHT, FOCAL] = [1200, 900, 1700] as const;
/** The near plate is so much nearer to the camera than the joints, cm. */
const NEARER = 70;
const PLATE = 45;
/** SD of a click, cm in the plane of the joints. */
const CLICK = 0.6;

const rad = Math.PI / 180;

/** Where the camera shows a point of the side view that is so much nearer than the joints. */
export function project({ away, high, roll, looks }: Camera, [x, y]: Point, nearer = 0): Point {
  const across = ((looks === 'left' ? -x : x) * FOCAL) / (away - nearer);
  const down = (-(y - high) * FOCAL) / (away - nearer);
  const [c, s] = [Math.cos(roll * rad), Math.sin(roll * rad)];
  return [WIDTH / 2 + across * c - down * s, HEIGHT / 2 + across * s + down * c];
}

const joints = ['toe', 'heel', 'ankle', 'knee', 'hip', 'shoulder', 'bar'] as const;

/** The points of one frame as the sheet stores them, in the order of its columns. */
function clicked(random: Random, posture: FigurePoints, camera: Camera): readonly number[] {
  const { bar } = posture;
  const click = (at: Point, nearer = 0): readonly number[] => {
    const [x, y] = project(camera, at, nearer);
    const sd = (CLICK * FOCAL) / camera.away;
    return [rounded(x + random.normal(0, sd), 0.1), rounded(y + random.normal(0, sd), 0.1)];
  };
  return [
    ...joints.flatMap((joint) => click(posture[joint])),
    ...click([bar[0] - PLATE / 2, bar[1]], NEARER),
    ...click([bar[0] + PLATE / 2, bar[1]], NEARER),
    ...click([-80, 0]),
    ...click([80, 0]),
  ];
}

const pointHeadings = [
  ...['Toe', 'Heel', 'Ankle', 'Knee', 'Hip', 'Shoulder', 'Bar', 'Length, one end', 'Length, other end'],
  ...['Level, one end', 'Level, other end'],
].flatMap((label) => [`${label} x`, `${label} y`]);

interface Squat {
  readonly lifter: Lifter;
  readonly lean: number;
}

/** Digitised squats of some lifters at both tests, and a set of the first of them. */
export function observedCsv(all: readonly Observable[]): string {
  const random = new Random(4);
  const rows: CsvCell[][] = [];
  const add = (
    { name }: Observable,
    day: string,
    camera: Camera,
    { lifter, lean }: Squat,
    more: { readonly repetition?: number; readonly time?: number; readonly file: string },
  ) => {
    rows.push([
      name,
      day,
      more.repetition ?? null,
      more.file,
      more.time ?? null,
      camera.looks,
      ...clicked(random, figureWith(lifter, lean), camera),
      'floor',
      PLATE,
      camera.away,
      NEARER,
    ]);
  };
  const cameraOf = (): Camera => ({
    away: rounded(random.normal(430, 40), 5),
    high: rounded(random.normal(92, 6), 1),
    roll: rounded(random.normal(0, 1.2), 0.1),
    looks: random.chance(0.7) ? 'right' : 'left',
  });
  /** A squat at a share of the ankle range, so many degrees from what keeps the bar over mid-foot. */
  const made = (build: Observable['build'], share: number, depth: number, off: number): Squat | null => {
    const shin = build.ankle * share;
    const balanced = figureOf({ ...build, ankle: shin, depth });
    return isIssue(balanced) ? null : { lifter: { ...build, ankle: shin, depth }, lean: balanced.lean + off };
  };
  all.forEach((lifter, at) => {
    const share = Math.min(1, Math.max(0.55, random.normal(0.76, 0.09)));
    const off = random.normal(1.5, 2.5);
    const looks: readonly (readonly [number, number, number])[] = [
      [lifter.build.ankle, 0, share],
      [lifter.later, 56, Math.min(1, share + Math.max(0, random.normal(0.05, 0.05)))],
    ];
    for (const [ankle, days, used] of looks) {
      const depth = rounded(random.normal(-3, 4), 0.5);
      const one = made({ ...lifter.build, ankle }, used, depth, off * (days > 0 ? 0.6 : 1));
      const day = isoDay(lifter.tested, days);
      if (one)
        add(lifter, day, cameraOf(), one, { file: `drawn-${at + 1}-${days > 0 ? 'after' : 'before'}.png` });
    }
  });
  // A set of one lifter, filmed: the bottom of each repetition, and one repetition frame by frame.
  const tired = all[0]!;
  const camera = cameraOf();
  const day = isoDay(tired.tested, 58);
  const film = 'drawn-set.webm';
  for (let repetition = 1; repetition <= 8; repetition++) {
    const one = made(tired.build, 0.8 - 0.012 * repetition, -2, 0.4 * repetition);
    if (one) add(tired, day, camera, one, { repetition, time: rounded(3.4 * repetition, 0.01), file: film });
  }
  const down = [60, 45, 30, 18, 8, 0, -4];
  const depths = [...down, ...down.slice(0, -1).reverse()];
  depths.forEach((depth, step) => {
    const share = 0.76 * Math.min(1, Math.max(0.12, (90 - depth) / 94));
    const one = made(tired.build, share, depth, depth < 40 && step > 6 ? 3.5 : 0.5);
    const time = rounded(28.6 + 0.2 * step, 0.01);
    if (one) add(tired, isoDay(tired.tested, 60), camera, one, { repetition: 1, time, file: film });
  });
  return csvText(
    [
      [
        ...['Athlete', 'Filmed', 'Repetition', 'Picture', 'Frame time (s)', 'Facing'],
        ...pointHeadings,
        ...['Level line', 'Known length (cm)', 'Camera distance (cm)', 'Known length nearer by (cm)'],
      ],
      ...rows,
    ],
    plain,
  );
}
