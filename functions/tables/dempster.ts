import { assumption, constant, definition, secondary } from '../core/source.ts';

const dempster = secondary(
  'Dempster 1955, as printed in Winter, Biomechanics and Motor Control of Human Movement, Table 4.1',
);
const mass = (name: string, value: number) => constant(`mass of ${name}`, value, 'of body mass', dempster);
const centre = (name: string, value: number, from: string) =>
  constant(`centre of mass of ${name}, from the ${from}`, value, 'of its length', dempster);

/** Shares of body mass; foot, shank, thigh and arm are one side. */
export const footMass = mass('a foot', 0.0145);
export const shankMass = mass('a shank', 0.0465);
export const thighMass = mass('a thigh', 0.1);
export const hatMass = mass('head, arms and trunk', 0.678);
export const pelvisMass = mass('the pelvis', 0.142);
export const trunkHeadMass = mass('trunk with head and neck', 0.578);
export const armMass = mass('an arm', 0.05);

/** Centres of mass as shares of the segment's length. */
export const shankCentre = centre('the shank', 0.433, 'knee');
export const thighCentre = centre('the thigh', 0.433, 'hip');
export const hatCentre = centre('head, arms and trunk', 0.626, 'hip');
export const trunkHeadCentre = centre('trunk with head and neck', 0.66, 'hip');

/**
 * Where both arms’ centre of mass lies when they are held level, in trunk lengths: the table gives it from shoulder to
 * wrist, .186 + .146 = .332 of stature, which is 1.153 trunk lengths.
 */
export const levelArms = constant(
  'arms’ centre of mass ahead of the shoulder, arms level',
  0.611,
  'of trunk length',
  secondary(
    'Winter Table 4.1: .530 of the length from shoulder to wrist, .332 of stature, which is 1.153 trunk lengths',
  ),
);

const gobletHands = assumption('where the forearms hold a weight before the chest; this project’s choice');
export const gobletArmsAlong = constant(
  'arms’ centre of mass along the trunk, goblet',
  0.8,
  'of trunk length',
  gobletHands,
);
export const gobletArmsAhead = constant(
  'arms’ centre of mass ahead of the trunk line, goblet',
  0.25,
  'of trunk length',
  gobletHands,
);

/** The joint at which the back's moment is taken, above the hip along the trunk. */
export const lumbarAlong = constant('L4/L5 above the hip', 0.2, 'of trunk length', {
  status: 'from memory',
  citation: 'Chaffin & Andersson, Occupational Biomechanics, give about .195 to .20',
});
/** What lies above it. */
export const aboveLumbarMass = constant(
  'mass above L4/L5: head, arms and trunk less pelvis',
  0.536,
  'of body mass',
  definition('.678 − .142'),
);
export const aboveLumbarCentre = constant(
  'centre of mass above L4/L5, from the hip',
  0.744,
  'of trunk length',
  assumption('(.678 × .626 − .142 × .179) / .536, the pelvis’ own centre of mass taken at .895 × .20 = .179'),
);
