import type { Point, PostureFigure } from '../figure-answers.ts';
import type { Frame } from './geometry.ts';
import { blob, elbow, limb, line, towards } from './geometry.ts';

/**
 * Only joints and lengths are measured; the outlines around them are drawn from the eye. Each is a row of points along a
 * segment: how far along it (0 at the first joint, 1 at the second) and how far to the side, in lengths of the segment.
 */
type Outline = readonly (readonly [along: number, aside: number])[];

/** Hip to shoulder; the front is positive. */
const trunkOutline: Outline = [
  [-0.13, -0.03],
  [-0.09, -0.16],
  [0.05, -0.205],
  [0.2, -0.16],
  [0.38, -0.105],
  [0.6, -0.135],
  [0.82, -0.15],
  [0.98, -0.105],
  [1.06, -0.01],
  [1.0, 0.085],
  [0.8, 0.135],
  [0.55, 0.12],
  [0.3, 0.115],
  [0.1, 0.13],
  [-0.06, 0.09],
];
/** Hip to knee; the under side is positive. */
const thighOutline: Outline = [
  [-0.14, 0.02],
  [-0.08, -0.14],
  [0.1, -0.175],
  [0.4, -0.165],
  [0.75, -0.135],
  [0.98, -0.118],
  [1.1, -0.03],
  [1.06, 0.085],
  [0.85, 0.1],
  [0.5, 0.145],
  [0.15, 0.185],
  [-0.06, 0.15],
];
/** Knee to ankle; the calf is positive. */
const shankOutline: Outline = [
  [-0.08, -0.03],
  [0.0, -0.105],
  [0.2, -0.1],
  [0.6, -0.075],
  [0.95, -0.06],
  [1.06, -0.02],
  [1.03, 0.06],
  [0.75, 0.075],
  [0.45, 0.135],
  [0.22, 0.155],
  [0.02, 0.1],
];

/**
 * Head, neck and arms follow the fractions of stature of Drillis & Contini 1966 (trunk .288, neck .052, head .130, upper
 * arm .186, forearm with the grip .146 of stature), the head and the arms held wide drawn a little smaller.
 */
const trunkShare = 0.288;
const neck = 0.052 / trunkShare;
const head = (0.9 * 0.13) / trunkShare;
const upperArm = (0.62 * 0.186) / trunkShare;
const forearm = (0.62 * 0.146) / trunkShare;

/** One lifter as SVG paths, and the points that labels hang on. */
export interface Body {
  readonly foot: string;
  readonly neck: string;
  /** Outlines behind the arm, in drawing order. */
  readonly skin: readonly string[];
  readonly arm: readonly string[];
  readonly headCentre: Point;
  readonly headRadii: readonly [number, number];
  readonly headTurn: number;
  /** Ankle to shoulder, joint by joint. */
  readonly links: string;
  readonly armLinks: string;
  readonly joints: readonly Point[];
  /** What stands under the heel; null on the flat. */
  readonly wedge: string | null;
}

export function bodyOf(posture: PostureFigure, frame: Frame): Body {
  const ankle = frame.at(posture.ankle);
  const knee = frame.at(posture.knee);
  const hip = frame.at(posture.hip);
  const shoulder = frame.at(posture.shoulder);
  const hand = frame.at(posture.bar);
  const heel = frame.at(posture.heel);
  const ball = frame.at(posture.ball);
  const trunk = Math.hypot(shoulder[0] - hip[0], shoulder[1] - hip[1]);
  // The neck bends back a little from the trunk's line: the lifter looks ahead.
  const nape = towards(shoulder, posture.lean * 0.75, neck * trunk);
  const gaze = posture.lean * 0.5;
  const bent = elbowOf(posture, shoulder, hand, trunk);
  return {
    foot: footOutline(posture, frame),
    skin: [
      blob(around(knee, ankle, shankOutline)),
      blob(around(hip, shoulder, trunkOutline)),
      blob(around(hip, knee, thighOutline)),
    ],
    neck: limb(shoulder, trunk * 0.085, nape, trunk * 0.075),
    arm: [limb(bent, trunk * 0.052, hand, trunk * 0.04), limb(shoulder, trunk * 0.07, bent, trunk * 0.052)],
    headCentre: towards(nape, gaze, head * trunk * 0.4),
    headRadii: [head * trunk * 0.39, head * trunk * 0.5],
    headTurn: gaze,
    links: line(ankle, knee, hip, shoulder),
    armLinks: line(shoulder, bent, hand),
    joints: [ankle, knee, hip, shoulder],
    wedge: posture.lift > 0 ? `${line(heel, frame.at([posture.heel[0], 0]), ball)}Z` : null,
  };
}

/**
 * Under a bar on the back the upper arm hangs along the trunk, under one in front it points ahead; the forearm goes from
 * there to the bar. Arms that reach out are as long as they are.
 */
function elbowOf({ lean }: PostureFigure, shoulder: Point, hand: Point, trunk: number): Point {
  const [dx, dy] = [hand[0] - shoulder[0], hand[1] - shoulder[1]];
  if (Math.hypot(dx, dy) > 0.4 * trunk) return elbow(shoulder, hand, upperArm * trunk, forearm * trunk);
  const slope = (lean * Math.PI) / 180;
  const ahead = dx * Math.cos(slope) + dy * Math.sin(slope) > 0;
  return towards(shoulder, ahead ? 100 : lean + 172, upperArm * trunk);
}

/** The points of an outline around the segment from a to b, as drawn. */
function around(a: Point, b: Point, outline: Outline): readonly Point[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return outline.map(([along, aside]) => [a[0] + dx * along - dy * aside, a[1] + dy * along + dx * aside]);
}

/** Heel, sole, ball, toes, instep and shaft, turned up about the ball with the heel. */
function footOutline({ heel, ball, toe, ankle, pitch }: PostureFigure, frame: Frame): string {
  const turn = (pitch * Math.PI) / 180;
  /** A point given flat, behind (−) or ahead (+) of the ball and above the sole. */
  const raised = (x: number, y: number): Point =>
    frame.at([
      ball[0] + x * Math.cos(turn) + y * Math.sin(turn),
      ball[1] - x * Math.sin(turn) + y * Math.cos(turn),
    ]);
  const back = -Math.hypot(heel[0] - ball[0], heel[1] - ball[1]);
  const front = toe[0] - ball[0];
  const ankleAlong = back + (ankle[0] - heel[0]) * 0.98;
  return blob([
    raised(back, 0.2),
    raised(back - 0.9, 2.4),
    raised(ankleAlong - 4.6, 6.4),
    raised(ankleAlong - 0.4, 8.2),
    raised(ankleAlong + 4, 7),
    raised(-2.6, 4),
    frame.at([ball[0] + front * 0.55, 2.7]),
    frame.at([ball[0] + front * 0.97, 1.7]),
    frame.at([ball[0] + front, 0.5]),
    frame.at([ball[0] + front * 0.8, 0]),
    frame.at([ball[0], 0]),
    raised(back * 0.5, 0.1),
  ]);
}
