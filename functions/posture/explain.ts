import { type Issue, issue } from '../core/issue.ts';
import { defaultFoot } from '../tables/foot.ts';
import { rangeOfAnkle } from '../tables/parameters.ts';
import { type BarRulePlacement, barRule, demandShare, leanThatBalances } from './balance.ts';
import { leanOf } from './lean.ts';
import { newLeg, pitchOf, setLeg } from './leg.ts';
import { leansOfMixtures, type Part, referenceBuild, shapleyOf, swappedIn } from './part.ts';
import { liftTooHigh } from './why.ts';

/** The seven parts of an observed lean, which add up to it, and the sum of the three lengths. */
export const explained = [
  'reference',
  'femur',
  'tibia',
  'trunk',
  'ankle',
  'use',
  'balance',
  'build',
] as const;
export type Explained = (typeof explained)[number];

/** What the lifter was seen at and is built like; lengths cm, angles deg. */
export interface Observed {
  readonly lean: number;
  readonly shank: number;
  readonly depth: number;
  readonly femur: number;
  readonly tibia: number;
  readonly trunk: number;
  readonly ankle: number;
  readonly referenceAnkle: number;
  readonly lift: number;
  readonly placement: BarRulePlacement;
  readonly foot: number | undefined;
  readonly stance: number;
}

const leg = newLeg();

export const footOf = (o: Observed): number => o.foot ?? defaultFoot(o.femur, o.tibia, o.trunk);

/** The lean of the bar rule with the reference's build and ankle. NaN without a posture. */
export function referenceLean(o: Observed): number {
  const [f, s, t] = referenceBuild(o.femur + o.tibia + o.trunk);
  return leanOf(barRule(o.placement), f, s, t, o.referenceAnkle, o.lift, o.depth, footOf(o), o.stance);
}

/** The lean of the bar rule with the whole ankle range used. */
export const wholeRangeLean = (o: Observed): number =>
  leanOf(barRule(o.placement), o.femur, o.tibia, o.trunk, o.ankle, o.lift, o.depth, footOf(o), o.stance);

/** The lean of the bar rule at the shin angle that was observed. */
export function observedShinLean(o: Observed): number {
  if (o.shank >= 90) return Number.NaN;
  const foot = footOf(o);
  const balance = barRule(o.placement);
  setLeg(leg, o.femur, o.tibia, foot, pitchOf(o.lift, foot), o.shank, o.depth, o.stance);
  return leanThatBalances(balance, demandShare(balance, leg, o.trunk));
}

export const mixtureLeans = (o: Observed): Float64Array =>
  leansOfMixtures(
    barRule(o.placement),
    o.femur,
    o.tibia,
    o.trunk,
    o.ankle,
    o.referenceAnkle,
    o.lift,
    o.depth,
    footOf(o),
    o.stance,
  );

/** The lengths' part: what femur, tibia and trunk add together. */
export const buildPart = (leans: Float64Array): number =>
  shapleyOf('femur', leans) + shapleyOf('tibia', leans) + shapleyOf('trunk', leans);

/** One part of the observed lean, deg, or the issue that says which posture it lacks. */
export function explain(part: Explained, o: Observed): number | Issue {
  const foot = footOf(o);
  const pitch = pitchOf(o.lift, foot);
  if (Number.isNaN(pitch)) return liftTooHigh(o.lift, foot)!;
  const used = o.shank - pitch;
  if (used < rangeOfAnkle.min || used > rangeOfAnkle.max)
    return issue('#NUM!', 'shank-outside-ankle', {
      parameter: 'shank',
      received: o.shank,
      unit: 'deg',
      details: { used, pitch },
    });
  if (part === 'reference') return or(referenceLean(o), part, REFERENCE);
  if (part === 'use') {
    const whole = wholeRangeLean(o);
    if (Number.isNaN(whole)) return without(part, OWN);
    return or(observedShinLean(o) - whole, part, SEEN);
  }
  if (part === 'balance') return or(o.lean - observedShinLean(o), part, SEEN);
  const leans = mixtureLeans(o);
  const gap = leans.findIndex(Number.isNaN);
  if (gap >= 0) return without(part, Number.isNaN(leans[15]!) ? OWN : mixed(gap));
  return part === 'build' ? buildPart(leans) : shapleyOf(part satisfies Part, leans);
}

const mixed = (own: number): string =>
  own === 0 ? REFERENCE : `this lifter with ${swappedIn(own)} as in the reference`;
const REFERENCE = 'the reference build';
const OWN = 'this lifter with the whole ankle range used';
const SEEN = 'this lifter at the observed "shank"';

const or = (value: number, part: Explained, posture: string): number | Issue =>
  Number.isNaN(value) ? without(part, posture) : value;

const without = (part: Explained, posture: string): Issue =>
  issue('#NUM!', 'explain-without-posture', { details: { part, posture } });
