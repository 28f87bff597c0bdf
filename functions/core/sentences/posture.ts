import { fig, got, of, type Sentences } from './wording.ts';

/** Postures that cannot be held, and what is asked of one. */
export const postureSentences: Sentences = {
  'lift-past-ball': (i) =>
    `${of(i)} got ${got(i)}; it accepts less than ${fig(i, 'lever')} cm, the length from heel to ball of a foot of ${fig(i, 'foot')} cm. Lower the heel lift or check the foot.`,
  'shank-level': (i) =>
    `${i.function} finds no posture: "ankle" ${fig(i, 'ankle')} deg and the pitch of the heel lift ${fig(i, 'pitch')} deg give a shin angle of ${fig(i, 'shank')} deg; it accepts less than 90 together. Lower the heel lift or check the ankle.`,
  'hip-too-far-behind': (i) =>
    `${i.function} finds no balanced posture: "femur", "tibia" and "ankle" leave ${fig(i, 'asked')} cm behind mid-foot to make up, and a "trunk" loaded this way brings at most ${fig(i, 'most')} cm forward. Allow more ankle range, a heel lift, more toe-out or less depth, or check the lengths.`,
  'hip-too-far-ahead': (i) =>
    `${i.function} finds no balanced posture: "femur", "tibia" and "ankle" leave ${fig(i, 'asked')} cm ahead of mid-foot to make up, and a "trunk" loaded this way takes at most ${fig(i, 'most')} cm back. Lower the heel lift or the ankle range, or check the lengths.`,
  'lean-past-level': (i) =>
    `${i.function} finds no posture: "femur", "tibia", "trunk" and "ankle" would need a lean of ${fig(i, 'lean')} deg; it accepts up to 90. Allow more ankle range or a heel lift, or check the lengths.`,
  'arms-forward-with-bar': (i) =>
    `${of(i)} got "arms-forward" with a bar of ${fig(i, 'bar')} kg; it accepts that only without a bar. Set the bar to 0, or say how the bar is carried.`,
  'nothing-at-60': (i) =>
    `${i.function} finds no posture within the limits even at 60 deg above parallel ("max_lean" ${fig(i, 'max_lean')}, "max_hip" ${fig(i, 'max_hip')}, "max_knee" ${fig(i, 'max_knee')} deg). Loosen a limit, or check the lengths and the ankle.`,
  'part-without-posture': (i) =>
    `${i.function} compares mixtures of this lifter and the reference, and with ${i.details?.swapped} as in the reference no posture is balanced. Choose another "reference_ankle" or a heel lift.`,
  'explain-without-posture': (i) =>
    `${i.function} needs a balanced posture of ${i.details?.posture} for the part "${i.details?.part}", and there is none. Check the lengths, "shank" and "ankle", or choose another "reference_ankle".`,
  'shank-outside-ankle': (i) =>
    `${of(i)} got ${got(i)}; less the pitch of the heel lift, ${fig(i, 'pitch')} deg, the ankle would be at ${fig(i, 'used')} deg; it accepts -10 to 70. Check the shin angle and the heel lift.`,
  'error-without-posture': (i) =>
    `${i.function} needs a posture on both sides of every measure, and this one lies at the edge of balance ("${i.details?.moved}" moved by .01 has none). Check the lengths and the ankle.`,
  'lift-without-foot': (i) =>
    `${of(i)} is blank, and "lift" is ${fig(i, 'lift')} cm; a heel lift needs the foot, a number, 10 to 45 cm. Give the foot, or leave the heel lift out.`,
  'hip-over-ankle': (i) =>
    `${of(i)}, "femur", "tibia" and "depth" leave the hip ${fig(i, 'behind')} cm behind the ankle; it accepts more than 0, since turning out has to move the feet apart. Check the shin angle and the depth.`,
  'no-such-stance': (i) =>
    `${of(i)} got ${got(i)}; it accepts ${fig(i, 'hips')} to ${fig(i, 'widest')} cm with these legs, toe-out angles of 0 to 60 deg. Measure between the ankle joints, and check "hips".`,
  'points-coincide': (i) =>
    `${of(i)} and "${i.details?.other}" are the same point (${i.details?.x}, ${i.details?.y}); it accepts points that differ, since an angle needs a line. Digitise them again.`,
};
