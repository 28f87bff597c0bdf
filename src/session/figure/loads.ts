/** What body and bar ask of hips, knees and ankles in one posture, and where the weight acts: at the minimum lean of either rule, and as the lifter was seen. */
import { isIssue } from '../../../functions/core/issue.ts';
import { defaultFoot } from '../../../functions/tables/foot.ts';
import type { ReadContext } from '../open-book.ts';
import { explainedLean } from './explained.ts';
import type { PostureLoads, Told } from './figure-answers.ts';
import { ask, build, type Known, placementOf, setup } from './figure-lifter.ts';

/** Where a lifter is: trunk lean and shin angle, depth and heel lift; deg and cm. */
interface At {
  readonly lean: number;
  readonly shin: number;
  readonly depth: number;
  readonly lift: number;
}

/** Arms held forward carry no bar. */
const barOf = (known: Known): number | undefined =>
  placementOf(known) === 'arms-forward' ? 0 : known.number('bar');

/** Moments of both sides, N·m, the hips' share of hips and knees, and the centre of pressure; null without body mass and bar. */
export function loadsAt(
  context: ReadContext,
  known: Known,
  { lean, shin, depth, lift }: At,
): PostureLoads | null {
  const [mass, bar] = [known.number('mass'), barOf(known)];
  if (mass === undefined || bar === undefined) return null;
  const [femur, tibia, trunk] = build(known);
  const [placement, , stance] = setup(known);
  const foot =
    known.number('foot') ??
    defaultFoot(known.number('femur')!, known.number('tibia')!, known.number('trunk')!);
  const told = (value: unknown): Told =>
    typeof value === 'number'
      ? { value }
      : { value: null, ...(isIssue(value) ? { sentence: context.calculation.sentence(value) } : {}) };
  const seen = [lean, shin, mass, bar, femur!, tibia!, trunk!, foot, lift, depth, placement!, stance!];
  const hip = ask('MOMENT.HIP', [lean, trunk!, mass, bar, placement!]);
  const knee = ask('MOMENT.KNEE', [lean, femur!, trunk!, mass, bar, depth, placement!, stance!]);
  const share = typeof hip === 'number' && typeof knee === 'number' ? ask('MOMENT.SHARE', [hip, knee]) : null;
  return {
    lean,
    shin,
    hip: told(hip),
    knee: told(knee),
    ankle: told(ask('MOMENT.ANKLE', seen)),
    share: told(share),
    centre: told(ask('FOOT.CENTRE', seen)),
  };
}

/** A posture with its loads, in the order in which they are shown. */
export interface LoadsOf {
  readonly of: 'minimum' | 'system' | 'observed';
  readonly loads: PostureLoads;
}

/** Loads at the minimum lean with the bar over mid-foot and with the whole weight over it, and as observed; empty without mass and bar. */
export function figureLoads(context: ReadContext, known: Known): readonly LoadsOf[] {
  const [mass, bar] = [known.number('mass'), barOf(known)];
  if (known.missing.length > 0 || mass === undefined || bar === undefined) return [];
  const lift = Math.max(0, known.number('lift') ?? 0);
  const depth = known.number('depth') ?? 0;
  const foot =
    known.number('foot') ??
    defaultFoot(known.number('femur')!, known.number('tibia')!, known.number('trunk')!);
  const shin = ask('LEAN.SHANK', [known.value('ankle'), lift, foot]);
  const found: LoadsOf[] = [];
  const add = (of: LoadsOf['of'], at: Partial<At>) => {
    if (typeof at.lean !== 'number' || typeof at.shin !== 'number') return;
    const loads = loadsAt(context, known, { lean: at.lean, shin: at.shin, depth: at.depth!, lift: at.lift! });
    if (loads) found.push({ of, loads });
  };
  const number = (value: unknown): number | undefined => (typeof value === 'number' ? value : undefined);
  const here = { shin: number(shin)!, depth, lift };
  const tail = [...build(known), lift];
  add('minimum', { ...here, lean: number(ask('LEAN.AT', [depth, ...tail, ...setup(known)]))! });
  add('system', {
    ...here,
    lean: number(ask('LEAN.LOADED', [mass, bar, ...tail, depth, ...setup(known)]))!,
  });
  const seen = explainedLean(context, known);
  if (seen) add('observed', { lean: seen.lean, shin: seen.shin, depth: seen.depth, lift: seen.lift });
  return found;
}
