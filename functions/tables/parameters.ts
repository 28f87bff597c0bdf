import { number, numberMaybe, numberOr, option, optionMaybe, optionOr } from '../core/parameter.ts';

// Parameters that many functions share: name, unit, bounds and the reason for them are written here once.

export const boneBounds = {
  min: 15,
  max: 80,
  because: 'No thigh or shank of a person is shorter or longer.',
};
export const rangeOfAnkle = {
  min: -10,
  max: 70,
  because: 'Weight-bearing ankle range lies within this, with the tibia measured from the vertical.',
};
export const heel = { min: 0, max: 15, because: 'No heel lift or shoe raises the heel further.' };
const depths = {
  min: -60,
  max: 90,
  because: '0 is parallel, plus is above it, minus below; 90 is standing.',
};
const leans = { min: -30, max: 90, because: '0 is upright, 90 level with the floor.' };
const feet = { min: 10, max: 45, because: 'No foot of a person is shorter or longer.' };
const statures = { min: 80, max: 260, because: 'Standing heights of people lie within this.' };
const limitOfJoint = { min: 60, max: 180, because: '0 is a straight joint, 180 fully folded.' };

export const femur = () =>
  number('femur', 'cm', 'greater trochanter (hip joint) to lateral femoral epicondyle', {
    bounds: boneBounds,
  });
export const tibia = () =>
  number('tibia', 'cm', 'lateral femoral epicondyle to lateral malleolus (ankle joint)', {
    bounds: boneBounds,
  });
export const trunk = () =>
  number('trunk', 'cm', 'greater trochanter to acromion (shoulder)', {
    bounds: { min: 20, max: 100, because: 'No trunk of a person is shorter or longer.' },
  });
const ankleAbout = 'weight-bearing dorsiflexion: tibia from the vertical, knee bent, heel down';
export const ankle = () => number('ankle', 'deg', ankleAbout, { bounds: rangeOfAnkle });
export const referenceAnkle = () =>
  numberOr(38, 'reference_ankle', 'deg', 'weight-bearing dorsiflexion of the reference', {
    bounds: rangeOfAnkle,
  });

const footAbout = 'heel to longest toe';
export const foot = () => number('foot', 'cm', footAbout, { bounds: feet });
/** Left out, the foot follows from the lengths. */
export const footMaybe = (otherwise = '.152/.779 of femur + tibia + trunk') =>
  numberMaybe('foot', 'cm', `${footAbout}; left out: ${otherwise}`, { bounds: feet });

export const stature = () => number('stature', 'cm', 'standing height without shoes', { bounds: statures });
export const statureMaybe = () =>
  numberMaybe('stature', 'cm', 'standing height without shoes', { bounds: statures });
export const standingHeight = (name: string, about: string) =>
  number(name, 'cm', about, {
    bounds: { min: 1, max: 260, because: 'A landmark of somebody standing lies within this.' },
  });
export const sittingHeight = () =>
  number('sitting_height', 'cm', 'seat to the top of the head, sitting upright', {
    bounds: { min: 40, max: 160, because: 'Sitting heights of people lie within this.' },
  });

const liftAbout = 'height of the heel above the ball of the foot';
export const lift = () => number('lift', 'cm', liftAbout, { bounds: heel });
export const liftOr = () => numberOr(0, 'lift', 'cm', liftAbout, { bounds: heel });
export const maxLift = () => numberOr(5, 'max_lift', 'cm', 'maximum heel lift to consider', { bounds: heel });
export const pitch = () =>
  number('pitch', 'deg', 'angle of the sole to the floor, heel up', {
    bounds: { min: 0, max: 90, because: 'Level to upright is possible.' },
  });

const depthAbout = 'thigh above (+) or below (−) parallel';
export const depth = () => number('depth', 'deg', depthAbout, { bounds: depths });
export const depthOr = () => numberOr(0, 'depth', 'deg', depthAbout, { bounds: depths });
export const stanceBounds = {
  min: 0,
  max: 60,
  because: '0 is straight ahead; the model turns knees and feet out no further.',
};
export const stance = () =>
  numberOr(0, 'stance', 'deg', 'toe-out angle: how far knees and feet are turned out together', {
    bounds: stanceBounds,
  });
export const lean = () => number('lean', 'deg', 'trunk from the vertical, forward plus', { bounds: leans });
export const shank = () =>
  number('shank', 'deg', 'shin angle from the vertical, forward plus', {
    bounds: { min: -30, max: 90, because: '0 is upright, 90 level with the floor.' },
  });

export const bodyMass = (name = 'mass') =>
  number(name, 'kg', 'body mass', {
    bounds: { min: 10, max: 400, because: 'Body masses of people lie within this.' },
  });
export const bar = () =>
  number('bar', 'kg', 'mass of bar and plates together', {
    bounds: { min: 0, max: 700, because: 'Nobody has squatted more.' },
  });
export const lever = () =>
  numberOr(6, 'lever', 'cm', 'distance of the back muscles from the joint', {
    bounds: {
      above: 0,
      max: 20,
      because: 'A muscle pulls at some distance from the joint, inside the trunk.',
    },
  });

const gobletElsewhere = {
  goblet: 'With so light a load the bar rule says nothing: use LEAN.LOADED.',
} as const;
/** Placements of the bar rule. */
const placement = () =>
  optionOr(
    'high-bar',
    'placement',
    ['high-bar', 'low-bar', 'front', 'arms-forward'],
    'how the bar is carried; "arms-forward" is the squat without load, arms held level',
    {},
    gobletElsewhere,
  );
/** Placements of the system rule. */
export const anyPlacement = () =>
  optionOr(
    'high-bar',
    'placement',
    ['high-bar', 'low-bar', 'front', 'goblet', 'arms-forward'],
    'how the load is carried; "arms-forward" is the squat without load, arms held level',
  );
/** Placements with a bar on the trunk, for the load on the back. */
export const barPlacement = () =>
  optionOr(
    'high-bar',
    'placement',
    ['high-bar', 'low-bar', 'front'],
    'how the bar is carried',
    {},
    {
      goblet: 'The arms carry part of that load: use MOMENT.HIP and MOMENT.KNEE, or LEAN.LOADED.',
      'arms-forward': 'Without a bar the arms are held out: use MOMENT.HIP and MOMENT.KNEE with a bar of 0.',
    },
  );

const sexWords = { f: 'female', m: 'male' } as const;
export const sex = () => option('sex', ['female', 'male'], 'whose reference values', sexWords);
export const sexMaybe = (about: string) => optionMaybe('sex', ['female', 'male'], about, sexWords);

const maxLean = () =>
  numberOr(60, 'max_lean', 'deg', 'maximum lean wanted', {
    bounds: { min: 0, max: 90, because: '0 is upright, 90 level with the floor.' },
  });
const maxHip = () =>
  numberOr(145, 'max_hip', 'deg', 'maximum hip flexion available', { bounds: limitOfJoint });
const maxKnee = () =>
  numberOr(155, 'max_knee', 'deg', 'maximum knee flexion available', { bounds: limitOfJoint });

/** `femur, tibia, trunk, ankle`: the lifter. */
export const build = [femur(), tibia(), trunk(), ankle()] as const;
/** `[placement], [foot], [stance]`: how the lifter stands. */
export const setup = [placement(), footMaybe(), stance()] as const;
/** `[max_lean], [max_hip], [max_knee]`: what ends the descent. */
export const limits = [maxLean(), maxHip(), maxKnee()] as const;
