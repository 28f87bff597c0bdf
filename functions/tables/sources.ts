import { assumption, definition, practice, published } from '../core/source.ts';

/** Sources that many functions rest on. */
export const linkGeometry = definition(
  'plane geometry of rigid links: foot, shank, thigh and trunk from the side, left and right alike',
);
export const barOverMidFoot = practice('the bar is held over mid-foot');
export const statics = definition('statics: a body at rest has its total centre of mass over its support');
export const sato2013 = published(
  'Sato et al. 2013, Int J Sports Sci Coach 8:571–578: trunks at 39.3° and 43.0° (SD 8–10°) where this model gives 39–41° and 42–43° from the measured shank and thigh angles; the load is not in the abstract, so this is a plausibility check',
);
export const wholeAnkleRange = assumption(
  'the whole ankle range is used; somebody who uses less of it leans more',
);

/** What anybody who reads a lean, a lift or a load should have before the eyes. */
export const leanError =
  'Read leans in whole degrees. Together, errors of ±1 cm and ±2° shift the lean by about 2–4° (LEAN.ERROR gives it for one lifter).';
export const modelCaution =
  'An estimate from a static model seen from the side: for comparing set-ups of one lifter, not for diagnosis.';
export const liftCaution = 'A heel lift shifts load from the hips and lower back to the knees.';
/** Whole advice on a heel that somebody is about to use. */
export const heelAdvice =
  'Heels must be firm and non-slip and support the whole heel. Make one change at a time, and stop if the knee hurts.';
/** What a lift that a function finds may be told as. */
export const upToNote =
  'Read the result as "up to N cm". Suggest a heel lift only where the lean exceeds the target by more than its error (LEAN.ERROR). No target is right for everybody: take the lifter’s own goal or an observed lean.';
export const painCaution = 'Pain, numbness or a recent injury: stop and see a licensed clinician.';
export const loadCaution =
  'Near-maximal loads: use safety pins or spotters, and a qualified coach. Follow local rules for testing minors and for keeping health data.';

/** Conventions of the posture functions. */
export const angleNote =
  'Lean and shin angle are measured from the vertical, forward plus; depth is the thigh above (+) or below (−) parallel. Papers differ: a trunk angle from the horizontal is 90 less the lean, and an internal knee angle is 180 less the flexion.';
export const minimumLeanNote =
  'The result is the minimum lean: the whole ankle range is used. Below 0 means that the ankle has range to spare.';
/** What lifters were seen to use of their ankle range, for whoever compares a minimum lean with an observed one. */
export const rangeUsedNote =
  'Lifters were measured at shin angles of 27–31° (Sato 2013) where ankle ranges are 38–40° (Calatayud 2015): about three quarters of the range. For a lean nearer to what is seen give .75 × ankle, a working assumption, and name it so beside the minimum.';
/** Where the two rules of balance part. */
export const twoRulesNote =
  'With a light bar the two rules diverge. For femur 44.5, tibia 41, trunk 50 and ankle 28 the bar rule (LEAN.PARALLEL) gives 44.5° at any load; the system rule (LEAN.LOADED) gives 71.8° at 80 kg body mass with 20 kg. Read both where body mass and bar are known.';
/** A lean meant for the load functions. */
export const observedPosture =
  'Meant for an observed lean and shin angle, not for the model’s minimum lean. At the minimum lean of an average man (29°, 85 kg with 85 kg) the hips’ share of the moments is .45 where a study found .62 (Wretenberg 1996, MSSE 28:218, high bar). At the observed 39.3° (Sato 2013) the same formulas give .61.';
export const stanceNote =
  'Toe-out 0° is feet straight ahead. The gain from turning out is an upper bound, since the hip’s own range narrows as it turns.';
export const weightBearingNote =
  'Ankle is the weight-bearing figure (knee-to-wall or weight-bearing lunge). One taken without weight is 15–20° lower and must not be fed in (BMC Musculoskelet Disord 2014 15:246: 20° against 39°).';
export const armsForwardNote =
  '"arms-forward" is the squat without load used in screening, arms held level: it balances the body’s own centre of mass over mid-foot, whatever the body mass.';
export const ceilingNote =
  'A heel-lift equivalent is a geometric ceiling: valid where the ankle is the limit and its whole range is used. The pitch goes to the shank and the ankle joint moves forward over the balance point, so 1 cm counts for a little more ankle range than its pitch.';
export const liftStudiesNote =
  'Studies disagree: Sato 2012 (shoes) and Monteiro 2022 (wedges of 25 and 50 mm) found trunks more upright; Legg 2017 (J Sports Sci 35:508) only unloaded; Lee 2019 (JSCR 33:606) no difference at 80 % of the maximum.';
export const liftStudies = [
  published('Sato 2012, JSCR 26:28–33'),
  published('Monteiro 2022, Hum Mov 23:97–103: wedges of 25 and 50 mm'),
  published('Legg 2017, J Sports Sci 35:508'),
  published('Lee 2019, JSCR 33:606'),
] as const;

/** What the knee's landmark is worth; for whoever measures or imports lengths. */
export const landmarkNote =
  'The knee is the lateral femoral epicondyle, close to the axis it turns about. Anyone measuring to the joint line (tibiale) takes 2.3 cm (men) or 2.8 cm (women) off the femur and adds it to the tibia: add it back, since uncorrected it is worth 4–6° of lean.';

export const limitsAssumed = assumption(
  'the limits: lean 60°, hip flexion 145°, knee flexion 155°, the largest shin angle that ankle and knee allow',
);

/** Where a limit was not measured on this lifter. */
export const limitsCaution =
  'Limits of lean, hip and knee left at their defaults are assumed, not measured on this lifter.';

/** Load estimates. */
export const staticLoad =
  'Static and in the plane seen from the side, both sides together: speed, bracing, belt and the pull of antagonists come on top or take away.';
export const backLines =
  '3400 N and 6400 N (NIOSH 81-122, 1981) are limits of compression alone, set for occupational lifting. Trained squats exceed both: never a pass or a fail.';
/** Shear has no line of its own. */
export const noShearLine =
  'Shear has no such line: 3400 N and 6400 N (NIOSH 81-122, 1981) are limits of compression alone, and never a pass or a fail.';
export const niosh = published(
  'NIOSH 81-122, 1981: 3400 N and 6400 N of compression, for occupational lifting',
);
export const cholewicki = published('Cholewicki 1991, MSSE 23:1179–1186: back muscles 6 cm from the joint');
