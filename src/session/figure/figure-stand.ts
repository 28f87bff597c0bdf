import { isIssue } from '../../../functions/core/issue.ts';
import { barRule } from '../../../functions/posture/balance.ts';
import { systemCentre } from '../../../functions/posture/centre.ts';
import { type FigurePoints, figureOf, figureWith } from '../../../functions/posture/figure.ts';
import { pitchOf } from '../../../functions/posture/leg.ts';
import { defaultFoot } from '../../../functions/tables/foot.ts';
import { MEASURING_ERROR } from '../measuring-error.ts';
import type { ReadContext } from '../open-book.ts';
import type { FigureNumbers, NoPosture, PostureFigure, Told } from './figure-answers.ts';
import { ask, build, type Known, lifterOf, placementOf, settingOf, setup } from './figure-lifter.ts';

/** The lifter at a depth on a lift, or why there is none. LEAN.AT checks the figures as it does in a formula. */
export function standOf(
  context: ReadContext,
  known: Known,
  lift: number,
  depth: number,
): PostureFigure | NoPosture {
  if (known.missing.length) return { sentence: missingSentence(known.missing) };
  const lean = ask('LEAN.AT', [depth, ...build(known), lift, ...setup(known)]);
  const told = (issue: Parameters<typeof context.calculation.sentence>[0]) =>
    context.calculation.sentence(issue);
  if (isIssue(lean)) return { sentence: told(lean), ...nearest(known, lift, depth) };
  const points = figureOf(lifterOf(known, lift, depth));
  return isIssue(points) ? { sentence: told(points) } : withLoads(known, points);
}

const missingSentence = (missing: readonly string[]): string =>
  `The figure needs ${missing.join(', ')} in this row, in columns with these names or in those that the figure’s settings name.`;

/** Adds what mass and bar make of a posture, where they are known. */
function withLoads(known: Known, points: FigurePoints): PostureFigure {
  const mass = known.number('mass');
  const bar = loadOf(known);
  if (mass === undefined || bar === undefined) return points;
  const placement = placementOf(known);
  const hip = ask('MOMENT.HIP', [points.lean, known.value('trunk'), mass, bar, placement]);
  const knee = ask('MOMENT.KNEE', [
    points.lean,
    known.value('femur'),
    known.value('trunk'),
    mass,
    bar,
    points.depth,
    placement,
    known.value('stance'),
  ]);
  if (typeof hip !== 'number' || typeof knee !== 'number') return points;
  const centre = systemCentre(points, known.number('trunk')!, placement, mass, bar);
  return { ...points, centre, hipMoment: hip, kneeMoment: knee };
}

/** Arms held forward carry no bar. */
const loadOf = (known: Known): number | undefined =>
  placementOf(known) === 'arms-forward' ? 0 : known.number('bar');

/**
 * Where no lean balances: the posture that comes nearest, as far forward as the trunk can bring the load, and how far
 * LEAN.OFFSET says it stays behind mid-foot. Nothing where the figures themselves are refused.
 */
function nearest(known: Known, lift: number, depth: number): Pick<NoPosture, 'nearest'> {
  const placement = placementOf(known);
  const balance = barRule(placement);
  if (balance === undefined) return {};
  const lean = Math.min(90, 90 - balance.tilt);
  const offset = ask('LEAN.OFFSET', [lean, ...build(known), lift, depth, ...setup(known)]);
  if (typeof offset !== 'number' || !(offset < 0)) return {};
  return { nearest: { posture: figureWith(lifterOf(known, lift, depth), lean), offset } };
}

/** The figures beside the drawing, each a value or the reason for none. */
export function numbersOf(
  context: ReadContext,
  known: Known,
  stand: PostureFigure | NoPosture,
  lift: number,
): FigureNumbers {
  const told = (value: unknown): Told => {
    if (typeof value === 'number' || typeof value === 'string') return { value };
    return { value: null, ...(isIssue(value) ? { sentence: context.calculation.sentence(value) } : {}) };
  };
  const posture = 'lean' in stand ? stand : undefined;
  const asked = (name: string, args: Parameters<typeof ask>[1]): Told =>
    known.missing.length ? { value: null } : told(ask(name, args));
  const foot = known.number('foot') ?? posture?.footLength;
  const { length, ankle } = MEASURING_ERROR;
  const loads = posture?.hipMoment === undefined ? { value: null, sentence: loadsMissing(known) } : undefined;
  return {
    leanError: asked('LEAN.ERROR', [length, ankle, ...build(known), lift, ...setup(known)]),
    deepest: asked('LEAN.DEEPEST', [...build(known), lift, ...setup(known)]),
    limiter: asked('LEAN.LIMITER', [...build(known), lift, ...setup(known)]),
    kneeAhead: posture
      ? asked('LEAN.KNEE.AHEAD', [known.value('tibia'), posture.shank, foot, lift])
      : { value: null },
    hipMoment: loads ?? { value: posture!.hipMoment! },
    kneeMoment: loads ?? { value: posture!.kneeMoment! },
    hipShare: loads ?? told(ask('MOMENT.SHARE', [posture!.hipMoment, posture!.kneeMoment])),
  };
}

function loadsMissing(known: Known): string {
  const missing = [
    ...(known.number('mass') === undefined ? ['body mass'] : []),
    ...(loadOf(known) === undefined ? ['bar load'] : []),
  ];
  return missing.length
    ? `Moments need ${missing.join(' and ')}: set ${missing.length > 1 ? 'them' : 'it'} below.`
    : '';
}

/** Most knee flexion that the descent is drawn with: what LEAN.DEEPEST takes where nothing is said. */
const MOST_KNEE = 155;
const HIGHEST = 60;
const STEP = 2.5;

/** Share of the ankle range that a lifter uses where the book sets none: measured squats use about three quarters (working assumption). */
const ANKLE_SHARE = 0.75;

/**
 * Postures from 60° above parallel down to the deepest that LEAN.DEEPEST allows, the shin moving in step with the thigh:
 * upright with the heel's pitch at the top, the used share of the ankle range at the bottom. Empty where there is none.
 */
export function descentOf(context: ReadContext, known: Known, lift: number): readonly PostureFigure[] {
  if (known.missing.length) return [];
  const deepest = ask('LEAN.DEEPEST', [...build(known), lift, ...setup(known)]);
  if (typeof deepest !== 'number') return [];
  const depths: number[] = [];
  for (let depth = HIGHEST; depth > deepest + 0.5; depth -= STEP) depths.push(depth);
  depths.push(Math.ceil(deepest * 100) / 100);
  const foot =
    known.number('foot') ??
    defaultFoot(known.number('femur')!, known.number('tibia')!, known.number('trunk')!);
  const pitch = pitchOf(lift, foot);
  const share = settingOf(context, 'ankle_share') ?? ANKLE_SHARE;
  const frames: PostureFigure[] = [];
  for (const depth of depths) {
    const step = (share * known.number('ankle')! * (90 - depth)) / (90 - deepest);
    // Deep down the knee holds the shin back before the ankle does.
    const ankle = Math.min(step, MOST_KNEE - 90 + depth - pitch);
    const stand = standOf(context, { ...known, ...withAnkle(known, ankle) }, lift, depth);
    if ('lean' in stand) frames.push(stand);
  }
  return frames;
}

const withAnkle = (known: Known, ankle: number): Pick<Known, 'value' | 'number'> => ({
  value: (measure) => (measure === 'ankle' ? ankle : known.value(measure)),
  number: (measure) => (measure === 'ankle' ? ankle : known.number(measure)),
});
