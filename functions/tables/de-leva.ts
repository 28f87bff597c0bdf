import { type Constant, constant, secondary } from '../core/source.ts';

const deLeva = secondary('de Leva 1996, Journal of Biomechanics 29:1223–1230, Table 4');

/** The eight segments; from upper arm to foot one side. Centre of mass from the proximal end. */
export const deLevaSegments = [
  'head',
  'trunk',
  'upper arm',
  'forearm',
  'hand',
  'thigh',
  'shank',
  'foot',
] as const;
export type DeLevaSegment = (typeof deLevaSegments)[number];

export interface SegmentRow {
  readonly mass: Constant;
  readonly centre: Constant;
}

// mass % and centre of mass % of each segment, men then women
const printed: Readonly<Record<DeLevaSegment, readonly [number, number, number, number]>> = {
  head: [6.94, 59.76, 6.68, 58.94],
  trunk: [43.46, 44.86, 42.57, 41.51],
  'upper arm': [2.71, 57.72, 2.55, 57.54],
  forearm: [1.62, 45.74, 1.38, 45.59],
  hand: [0.61, 79.0, 0.56, 74.74],
  thigh: [14.16, 40.95, 14.78, 36.12],
  shank: [4.33, 44.59, 4.81, 44.16],
  foot: [1.37, 44.15, 1.29, 40.14],
};
const landmarks: Readonly<Partial<Record<DeLevaSegment, string>>> = {
  head: 'vertex to gonion',
  trunk: 'suprasternale to mid-hip',
  shank: 'knee to lateral malleolus',
  foot: 'heel to longest toe',
};

function table(of: 'men' | 'women', mass: 0 | 2, centre: 1 | 3): Readonly<Record<DeLevaSegment, SegmentRow>> {
  const rows = {} as Record<DeLevaSegment, SegmentRow>;
  for (const name of deLevaSegments) {
    const row = printed[name];
    const ends = landmarks[name] ? ` (${landmarks[name]})` : '';
    rows[name] = {
      mass: constant(`mass of ${name}, ${of}`, row[mass] / 100, 'of body mass', deLeva),
      centre: constant(`centre of mass of ${name}${ends}, ${of}`, row[centre] / 100, 'of its length', deLeva),
    };
  }
  return rows;
}

export const deLevaMale = table('men', 0, 1);
export const deLevaFemale = table('women', 2, 3);
