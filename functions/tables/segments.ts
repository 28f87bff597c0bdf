import { option } from '../core/parameter.ts';
import type { Constant } from '../core/source.ts';
import { deLevaFemale, deLevaMale, deLevaSegments } from './de-leva.ts';
import {
  footMass,
  hatCentre,
  hatMass,
  pelvisMass,
  shankCentre,
  shankMass,
  thighCentre,
  thighMass,
} from './dempster.ts';

export const massTables = ['dempster', 'deleva-male', 'deleva-female'] as const;
export type MassTable = (typeof massTables)[number];

interface Row {
  readonly mass: Constant;
  readonly centre?: Constant;
}
type Rows = Readonly<Partial<Record<string, Row>>>;

const dempster: Rows = {
  foot: { mass: footMass },
  shank: { mass: shankMass, centre: shankCentre },
  thigh: { mass: thighMass, centre: thighCentre },
  'head-arms-trunk': { mass: hatMass, centre: hatCentre },
  pelvis: { mass: pelvisMass },
};
const tables: Readonly<Record<MassTable, Rows>> = {
  dempster,
  'deleva-male': deLevaMale,
  'deleva-female': deLevaFemale,
};

/** Words of either table; which of them a table has, `segmentRow` tells. */
export const segment = () =>
  option('segment', ['head-arms-trunk', 'pelvis', ...deLevaSegments], 'one segment; of limbs, one side');

/** The row of a segment, undefined when it is one of the other table's. */
export const segmentRow = (word: string, table: MassTable): Row | undefined => tables[table][word];

/** The segments of a table, for the sentence that says which there are. */
export const segmentsOf = (table: MassTable, withCentre = false): string =>
  Object.entries(tables[table])
    .filter(([, row]) => !withCentre || row?.centre)
    .map(([word]) => `"${word}"`)
    .join(', ');

/** Every mass or centre of mass of the tables. */
export const segmentConstants = (what: 'mass' | 'centre'): readonly Constant[] =>
  Object.values(tables).flatMap((rows) =>
    Object.values(rows).flatMap((row) => {
      const value = row?.[what];
      return value ? [value] : [];
    }),
  );
