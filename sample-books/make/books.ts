import { readFileSync } from 'node:fs';
import type { CsvCell } from './csv.ts';
import { Filling } from './fill.ts';
import { peopleCsv, trialsCsv } from './reliability.ts';
import { logCsv, mendedWall, observedSquatsCsv, retestCsv, rosterCsv } from './screening.ts';
import { exportCsv, measures } from './two-years.ts';

/** A file of the samples, by its path inside `sample-books`. */
export interface Made {
  readonly path: string;
  readonly text: string;
}

const template = (id: string): string =>
  readFileSync(new URL(`../templates/${id}.leverbook.json`, import.meta.url), 'utf8');

/** A sample: its CSV files, and the book that its template becomes with them. */
function sample(
  id: string,
  title: string,
  files: Readonly<Record<string, string>>,
  fill: (filling: Filling) => void,
): readonly Made[] {
  const filling = new Filling(template(id));
  filling.run({ do: 'set-title', title });
  fill(filling);
  return [
    ...Object.entries(files).map(([name, text]) => ({ path: `${id}/${name}`, text })),
    { path: `${id}.leverbook.json`, text: filling.session.save() },
  ];
}

const heights: readonly (readonly CsvCell[])[] = [
  ['Thin wedge', 0.6],
  ['Shoe, low heel', 1.3],
  ['Shoe, standard heel', 1.9],
  ['Shoe, high heel', 2.5],
  ['Wedge', 3],
];
const invented = (who: string) => `${who} invented: names, measures and dates. Replace them with your own.`;

/** The template has no target. The invented club has chosen one, in the way that the setting explains. */
const clubTarget = 32;
const howClubChose =
  'The choice of this invented club, not a recommendation: about the lean of the lifters in the group whose squat the coach wants the others to come near. Choose your own: the observed lean of a squat of the same lifter that looks and feels right is one way. There is no published target. Clear it and no heel lift is suggested.';

function screening(): readonly Made[] {
  const files = {
    'roster.csv': rosterCsv(),
    'retest.csv': retestCsv(),
    'training-log.csv': logCsv(),
    'observed-squats.csv': observedSquatsCsv(),
  };
  return sample('squat-screening', 'Squat screening, Quernhallow Barbell Circle', files, (filling) => {
    filling.bringIn('roster', 'roster.csv', files['roster.csv']);
    filling.type('roster', 'mass', 7, '56.2');
    filling.type('roster', 'wall_right', 18, String(mendedWall()));
    filling.type('heights', 'item', 1, ...heights.map(([item]) => String(item)));
    filling.type('heights', 'height', 1, ...heights.map(([, height]) => String(height)));
    filling.type('assumptions', 'amount', 0, String(clubTarget));
    filling.type('assumptions', 'why', 0, howClubChose);
    const who = { column: 'athlete', roster: 'roster', name: 'athlete', also: [] };
    filling.bringIn('retest', 'retest.csv', files['retest.csv'], {
      who: { ...who, same: { 'Carla Nise': 'Carla Nisse' } },
    });
    filling.type('retest', 'wall_left', 20, '');
    filling.type('retest', 'wall_right', 20, '');
    filling.bringIn('sessions', 'training-log.csv', files['training-log.csv'], {
      who: { ...who, same: { 'Kaia Lindquist': 'Kaia Lindqvist' } },
    });
    filling.type('sessions', 'minutes', 40, '');
    filling.bringIn('observed', 'observed-squats.csv', files['observed-squats.csv'], { who });
    filling.type('notes', 'note', 0, invented('The Quernhallow Barbell Circle and its lifters are'));
  });
}

const measured = [
  'occasion',
  'tested',
  'shoulder_height',
  'trochanter_height',
  'knee_height',
  'ankle_height',
  'foot',
  'wall_left',
  'wall_right',
  'mass',
];

function twoYears(): readonly Made[] {
  const files = { 'training-export.csv': exportCsv() };
  return sample('two-years-of-squats', 'Two years of squats', files, (filling) => {
    filling.bringIn('training', 'training-export.csv', files['training-export.csv']);
    filling.type('training', 'load', 33, '45 lb');
    filling.type('training', 'rpe', 120, '7.5');
    measures().forEach((row, at) => {
      measured.forEach((column, i) => {
        filling.type('measures', column, at, String(row[i]));
      });
    });
    filling.type('heights', 'item', 1, ...heights.map(([item]) => String(item)));
    filling.type('heights', 'height', 1, ...heights.map(([, height]) => String(height)));
    filling.type('notes', 'note', 0, invented('The lifter and the training are'));
  });
}

function reliability(): readonly Made[] {
  const files = { 'trials.csv': trialsCsv(), 'people.csv': peopleCsv() };
  return sample(
    'wall-test-reliability',
    'Knee to wall: reliability, and lean in 40 people',
    files,
    (filling) => {
      filling.bringIn('trials', 'trials.csv', files['trials.csv']);
      filling.bringIn('people', 'people.csv', files['people.csv']);
      filling.type('notes', 'note', 0, invented('The 40 people and their two testers are'));
    },
  );
}

/** All files of the samples that are made. */
export const madeFiles = (): readonly Made[] => [...screening(), ...twoYears(), ...reliability()];
