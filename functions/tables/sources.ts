import { assumption, definition, practice, published } from '../core/source.ts';

/** Sources that many functions rest on. */
export const linkGeometry = definition(
  'plane geometry of rigid links: foot, shank, thigh and trunk from the side, left and right alike',
);
export const barOverMidFoot = practice('the bar is held over mid-foot');
export const statics = definition('statics: what stands still has its total centre of mass over its support');
export const sato2013 = published(
  'Sato et al. 2013, Int J Sports Sci Coach 8:571–578: trunks at 39.3° and 43.0° (SD 8–10°) where this model gives 39–41° and 42–43° from the measured shank and thigh angles; the load is not in the abstract, so this is a plausibility check',
);
export const wholeAnkleRange = assumption(
  'the whole ankle range is used; somebody who uses less of it leans more',
);

/** What anybody who reads a lean, a lift or a load should have before the eyes. */
export const leanError =
  'Read leans in whole degrees: ±1 cm and ±2° of measuring error are ±2–3° of lean (LEAN.ERROR gives it for one lifter).';
export const modelCaution =
  'An estimate from a static model seen from the side: for comparing set-ups of one lifter, not for diagnosis.';
export const liftCaution = 'A heel lift moves demand from hip and back toward the knee.';
export const painCaution = 'Pain, numbness or a recent injury: stop and see a licensed clinician.';
export const loadCaution =
  'Near-maximal loads: use safety pins or spotters, and a qualified coach. Follow local rules for testing minors and for keeping health data.';

/** Conventions of the posture functions. */
export const angleNote =
  'Lean and shank are measured from the vertical, forward plus; depth is the thigh above (+) or below (−) parallel. Papers differ: a trunk angle from the horizontal is 90 less the lean, and an internal knee angle is 180 less the flexion.';
export const leastLeanNote =
  'The result is the least lean that the ankle allows, all of its range used; below 0 means that the ankle has range to spare.';
export const stanceNote =
  'Stance 0 is feet straight ahead. The gain from turning out is an upper bound, since the hip’s own range narrows as it turns.';
export const weightBearingNote =
  'Ankle is the weight-bearing figure (knee-to-wall or weight-bearing lunge). One taken without weight is 15–20° lower and must not be fed in (BMC Musculoskelet Disord 2014 15:246: 20° against 39°).';
export const armsForwardNote =
  '"arms-forward" is the squat without load used in screening, arms held level: it balances the body’s own centre of mass over mid-foot, whatever the body mass.';
export const ceilingNote =
  'A heel-lift equivalent is a geometric ceiling: it holds if the ankle is what limits and is used whole. The pitch goes to the shank and the ankle joint moves forward over the balance point, so 1 cm counts for a little more ankle range than its pitch.';
export const liftStudiesNote =
  'Studies disagree: Sato 2012 and Monteiro 2022 found trunks more upright; Legg 2017 (J Sports Sci 35:508) only unloaded; Lee 2019 (JSCR 33:606) no difference at 80 % of the maximum.';
export const liftStudies = [
  published('Sato 2012, JSCR 26:28–33'),
  published('Monteiro 2022, Hum Mov 23:97–103'),
  published('Legg 2017, J Sports Sci 35:508'),
  published('Lee 2019, JSCR 33:606'),
] as const;

/** What the knee's landmark is worth; for whoever measures or imports lengths. */
export const landmarkNote =
  'The knee is the lateral femoral epicondyle, close to the axis it turns about. Somebody who measures to the joint line (tibiale) takes 2.3 cm (men) or 2.8 cm (women) off the femur and adds it to the tibia: add it back, since uncorrected it is worth 4–6° of lean.';

export const limitsAssumed = assumption(
  'the limits: lean 60°, hip flexion 145°, knee flexion 155°, the shank at the largest angle that ankle and knee allow',
);

/** Where a limit was not measured on this lifter. */
export const limitsCaution =
  'Limits of lean, hip and knee left at their defaults are assumed, not measured on this lifter.';

/** Load estimates. */
export const staticLoad =
  'Static and in the plane seen from the side, both sides together: speed, bracing, belt and the pull of antagonists come on top or take away.';
export const backLines =
  '3400 N and 6400 N (NIOSH 81-122, 1981) were set for occupational lifting and trained squats exceed both: never a pass or a fail.';
export const niosh = published('NIOSH 81-122, 1981: 3400 N and 6400 N, for occupational lifting');
export const cholewicki = published('Cholewicki 1991, MSSE 23:1179–1186: back muscles 6 cm from the joint');
