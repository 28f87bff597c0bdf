/** A heel lift, or more ankle range? What each step of range would change for one lifter, beside the heel lift in use, what stretching gained in studies, and what a retest can tell. */
import { isIssue } from '../../../functions/core/issue.ts';
import { type Source, secondary } from '../../../functions/core/source.ts';
import { defaultFoot } from '../../../functions/tables/foot.ts';
import type { ReadContext } from '../open-book.ts';
import { explainedLean } from './explained.ts';
import type { HeelOrAnkle, HeelOrAnkleRow, Told } from './figure-answers.ts';
import { ask, build, type Known, settingOf, setup } from './figure-lifter.ts';
import { loadsAt } from './loads.ts';

/** Deg added to the ankle range, row by row. */
const GAINS = [0, 2.5, 5, 7.5, 10] as const;

/** Weeks of static stretching in healthy adults, against no stretching: mean gain of ankle range and its 95 % interval, deg. */
const stretching: HeelOrAnkle['stretching'] & { readonly source: Source } = {
  mean: 5.2,
  low: 4.4,
  high: 6,
  source: secondary('Medeiros & Martini 2018, The Foot: static stretching, meta-analysis, read in a summary'),
};

/** The table of one lifter at a depth and in a set-up. Null while femur, tibia, trunk or ankle is missing. */
export function heelOrAnkle(context: ReadContext, known: Known): HeelOrAnkle | null {
  if (known.missing.length > 0) return null;
  const ankle = known.number('ankle')!;
  const lift = Math.max(0, known.number('lift') ?? 0);
  const target = targetOf(context, known);
  const maxLift = settingOf(context, 'max_lift') ?? 5;
  const row = (gain: number, on: number): HeelOrAnkleRow => {
    const told = (value: unknown): Told =>
      isIssue(value)
        ? { value: null, sentence: context.calculation.sentence(value) }
        : typeof value === 'number'
          ? { value }
          : { value: null };
    const with_ = withAnkle(known, ankle + gain);
    const depth = known.number('depth') ?? 0;
    const lean = ask('LEAN.AT', [depth, ...build(with_), on, ...setup(with_)]);
    return {
      gain,
      lift: on,
      lean: told(lean),
      needed: target
        ? told(ask('LIFT.FOR.LEAN', [target.lean, ...build(with_), depth, maxLift, ...setup(with_)]))
        : { value: null, sentence: 'Set a target lean, or digitise a squat of this lifter.' },
      depth: told(ask('LEAN.DEEPEST', [...build(with_), on, ...setup(with_)])),
      ...sharesAt(context, with_, lean, on, depth),
    };
  };
  const wall = ask('ANKLE.TO.WALL', [ankle, known.value('tibia'), known.value('foot')]);
  const published = ask('TEST.PUBLISHED', ['wall', 'mdc']);
  const later =
    typeof wall === 'number' && typeof published === 'number'
      ? ask('ANKLE.FROM.WALL', [wall + published, known.value('tibia'), known.value('foot')])
      : null;
  return {
    ankle,
    target,
    rows: [...(lift > 0 ? [row(0, lift)] : []), ...GAINS.map((gain) => row(gain, 0))],
    stretching,
    detectable:
      typeof published === 'number' && typeof later === 'number'
        ? { wall: published, ankle: later - ankle }
        : null,
  };
}

const withAnkle = (known: Known, ankle: number): Known => ({
  ...known,
  value: (measure) => (measure === 'ankle' ? ankle : known.value(measure)),
  number: (measure) => (measure === 'ankle' ? ankle : known.number(measure)),
});

/** The lean to come to: the book's target, else what was observed of this lifter. */
function targetOf(context: ReadContext, known: Known): HeelOrAnkle['target'] {
  const set = settingOf(context, 'target_lean');
  if (set !== undefined) return { lean: set, from: 'target' };
  const seen = explainedLean(context, known);
  return seen ? { lean: seen.lean, from: 'observed' } : null;
}

/** Hip share and centre of pressure at a lean; both need body mass and bar. */
function sharesAt(
  context: ReadContext,
  known: Known,
  lean: unknown,
  lift: number,
  depth: number,
): Pick<HeelOrAnkleRow, 'share' | 'centre'> {
  const none = { share: { value: null }, centre: { value: null } };
  if (typeof lean !== 'number') return none;
  const foot =
    known.number('foot') ??
    defaultFoot(known.number('femur')!, known.number('tibia')!, known.number('trunk')!);
  const shin = ask('LEAN.SHANK', [known.value('ankle'), lift, foot]);
  if (typeof shin !== 'number') return none;
  const loads = loadsAt(context, known, { lean, shin, depth, lift });
  const sentence = 'Needs body mass and bar load.';
  return loads
    ? { share: loads.share, centre: loads.centre }
    : { share: { value: null, sentence }, centre: { value: null, sentence } };
}
