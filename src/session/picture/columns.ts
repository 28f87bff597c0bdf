import type { Column, NamedCell } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { SheetOutline } from '../sheet/sheet-answers.ts';
import { PLATE } from './points.ts';
import { STORED } from './stored-columns.ts';

/** What the observed squat needs of a lifter, looked up in the sheet that has all of it. */
const BUILD = ['femur', 'tibia', 'trunk', 'foot', 'ankle'] as const;
const unitOf = { femur: 'cm', tibia: 'cm', trunk: 'cm', foot: 'cm', ankle: 'deg' } as const;
const labels = {
  femur: 'Femur',
  tibia: 'Tibia',
  trunk: 'Trunk',
  foot: 'Foot',
  ankle: 'Ankle range',
} as const;

const here = (role: string, sheet: SheetOutline) => columnInRole(sheet, role)?.name;

/** The sheet that knows the lifters' build; the observed squat takes lengths and ankle range from there. */
const builds = (sheets: readonly SheetOutline[]): SheetOutline | undefined =>
  sheets.find(
    (sheet) => here('athlete', sheet) && BUILD.every((name) => name === 'foot' || here(name, sheet)),
  );

/** Formulas over the stored points: everything that a picture says, worked out again whenever a point changes. */
const COMPUTED: readonly { name: string; label: string; unit: string; formula: string; note: string }[] = [
  {
    name: 'level',
    label: 'Picture turned by',
    unit: 'deg',
    formula:
      'IF(COUNT(level_1_x, level_1_y, level_2_x, level_2_y) = 4, PHOTO.LEVEL(level_1_x, level_1_y, level_2_x, level_2_y, level_line), 0)',
    note: 'Clockwise, from the level or plumb line; 0 without one.',
  },
  {
    name: 'scale',
    label: 'Scale',
    unit: 'cm',
    formula:
      'IF(COUNT(scale_1_x, scale_1_y, scale_2_x, scale_2_y) = 4, PHOTO.SCALE(scale_1_x, scale_1_y, scale_2_x, scale_2_y, known_length, camera_distance, length_nearer), "")',
    note: 'Centimetres for one unit of the picture.',
  },
  {
    name: 'observed_lean',
    label: 'Observed lean',
    unit: 'deg',
    formula:
      'IF(COUNT(hip_x, shoulder_x) = 2, PHOTO.LEAN(hip_x, hip_y, shoulder_x, shoulder_y, facing, level), "")',
    note: 'Hip to shoulder, from the vertical, forward positive.',
  },
  {
    name: 'shin',
    label: 'Shin angle',
    unit: 'deg',
    formula:
      'IF(COUNT(ankle_x, knee_x) = 2, PHOTO.LEAN(ankle_x, ankle_y, knee_x, knee_y, facing, level), "")',
    note: 'Ankle to knee, from the vertical, forward positive.',
  },
  {
    name: 'depth',
    label: 'Depth (° above parallel)',
    unit: 'deg',
    formula: 'IF(COUNT(knee_x, hip_x) = 2, PHOTO.DEPTH(knee_x, knee_y, hip_x, hip_y, facing, level), "")',
    note: 'Thigh above (+) or below (−) parallel, by joint centres.',
  },
  {
    name: 'lean_error',
    label: 'Error of the lean',
    unit: 'deg',
    formula:
      'IF(COUNT(hip_x, shoulder_x, scale) = 3, PHOTO.ERROR(PHOTO.LENGTH(hip_x, hip_y, shoulder_x, shoulder_y, scale), 1), "")',
    note: 'SD, with hip and shoulder placed to 1 cm each (working assumption).',
  },
  {
    name: 'bar_ahead',
    label: 'Bar ahead of mid-foot',
    unit: 'cm',
    formula:
      'IF(COUNT(bar_x, heel_x, toe_x, scale) = 4, PHOTO.AHEAD(bar_x, bar_y, (heel_x + toe_x) / 2, (heel_y + toe_y) / 2, scale, facing, level), "")',
    note: 'Ahead (+) or behind (−) of the middle between heel and toe.',
  },
  {
    name: 'bar_height',
    label: 'Bar above the floor',
    unit: 'cm',
    formula:
      'IF(ISNUMBER(bar_ahead), SQRT(MAX(0, PHOTO.LENGTH(bar_x, bar_y, (heel_x + toe_x) / 2, (heel_y + toe_y) / 2, scale)^2 - bar_ahead^2)), "")',
    note: 'Above the middle between heel and toe.',
  },
];

/** Formulas that lay the model beside the picture, in the set-up that the book's settings and the sheet's foot give. */
const modelled = ({ setup, foot, reference }: Tail): typeof COMPUTED => [
  {
    name: 'minimum_lean',
    label: 'Minimum lean (model)',
    unit: 'deg',
    formula: `IF(COUNT(depth, femur, tibia, trunk, ankle) = 5, LEAN.AT(depth, femur, tibia, trunk, ankle, lift${setup}), "")`,
    note: 'The minimum this build needs at the observed depth, with the whole ankle range used.',
  },
  {
    name: 'ankle_used',
    label: 'Ankle range used',
    unit: '',
    formula: `IF(COUNT(shin, femur, tibia, trunk, ankle) = 5, ANKLE.USED(shin, ankle, lift, ${foot}), "")`,
    note: 'Share of the ankle range in use; above 1 the heel rises or the ankle test was too low.',
  },
  ...(
    [
      ['reference', 'Lean of an average build'],
      ['femur', 'Lean from femur'],
      ['tibia', 'Lean from tibia'],
      ['trunk', 'Lean from trunk'],
      ['ankle', 'Lean from ankle'],
      ['use', 'Lean from range not used'],
      ['balance', 'Lean from bar or back'],
    ] as const
  ).map(([part, label]) => ({
    name: `from_${part}`,
    label,
    unit: 'deg',
    formula: `IF(COUNT(observed_lean, shin, depth, femur, tibia, trunk, ankle) = 7, LEAN.EXPLAIN("${part}", observed_lean, shin, depth, femur, tibia, trunk, ankle, ${reference}, lift${setup}), "")`,
    note: 'One of seven parts that add up to the observed lean; smaller than its error: within error.',
  })),
];

/** What the formulas end in: placement and foot where the book has them, the lengths' own foot, the reference's ankle range. */
interface Tail {
  readonly setup: string;
  readonly foot: string;
  readonly reference: string;
}

/** The sheet in which squats are digitised: athlete, build by lookup, raw points, and what follows from them. */
export function observedSheet(
  sheets: readonly SheetOutline[],
  names: readonly Pick<NamedCell, 'name' | 'role'>[] = [],
) {
  const from = builds(sheets);
  const build = BUILD.filter((name) => !from || here(name, from)).map((name) => ({
    name,
    label: labels[name],
    kind: 'number' as const,
    dimension: (unitOf[name] === 'deg' ? 'angle' : 'length') as Column['dimension'],
    unit: unitOf[name],
    format: { digits: name === 'ankle' ? 0 : 1 },
    ...(from
      ? {
          formula: `IF(ISBLANK(athlete), "", INDEX(${from.name}.${here(name, from)}, MATCH(athlete, ${from.name}.${here('athlete', from)}, 0)))`,
          note: `Looked up in ${from.label} by the athlete’s name.`,
        }
      : {}),
  }));
  const setting = (role: string) => names.find((one) => (one.role ?? one.name.toLowerCase()) === role)?.name;
  const hasFoot = build.some(({ name }) => name === 'foot');
  const placement = setting('placement');
  const tail: Tail = {
    setup: `${placement ? `, ${placement}` : hasFoot ? ', "high-bar"' : ''}${hasFoot ? ', foot' : ''}`,
    foot: hasFoot
      ? 'IF(ISNUMBER(foot), foot, SEG.FOOT(femur, tibia, trunk))'
      : 'SEG.FOOT(femur, tibia, trunk)',
    reference: setting('reference_ankle') ?? '38',
  };
  const follows = (columns: typeof COMPUTED) =>
    columns.map(({ name, label, unit, formula, note }) => ({
      name,
      label,
      kind: 'number' as const,
      ...(unit === ''
        ? {}
        : { dimension: (unit === 'deg' ? 'angle' : 'length') as Column['dimension'], unit }),
      formula,
      note,
      format: { digits: name === 'scale' ? 4 : name === 'ankle_used' ? 2 : name.startsWith('bar_') ? 1 : 0 },
    }));
  const stored = STORED.map(({ of: _, choices, ...column }) => ({
    ...column,
    ...(choices ? { choices: [...choices] } : {}),
    ...(column.kind === 'number' && !column.unit ? { width: 76 } : {}),
  }));
  const taken = sheets.some(({ name }) => name.toLowerCase() === 'observed');
  return {
    do: 'add-sheet' as const,
    ...(taken ? {} : { name: 'observed' }),
    label: 'Observed squats',
    purpose: 'gathered' as const,
    note: `One row per picture or frame. Points are in the picture’s own units; the known length is ${PLATE} cm for a plate.`,
    rows: 1,
    columns: [
      { name: 'athlete', label: 'Athlete', kind: 'text' as const, width: 140 },
      { name: 'filmed', label: 'Filmed', kind: 'date' as const },
      {
        name: 'repetition',
        label: 'Repetition',
        kind: 'number' as const,
        format: { digits: 0 },
        note: 'Counts the repetitions of a set; frames of one repetition have the same number.',
      },
      {
        name: 'lift',
        label: 'Heel lift',
        kind: 'number' as const,
        dimension: 'length' as const,
        unit: 'cm',
        format: { digits: 1 },
      },
      ...follows(COMPUTED.slice(2, 5)),
      ...follows(modelled(tail)),
      ...follows(COMPUTED.slice(5)),
      ...build,
      ...stored,
      ...follows(COMPUTED.slice(0, 2)),
    ],
  };
}
