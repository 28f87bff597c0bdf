import type { Json } from '../../../src/book/model.ts';
import { Session } from '../../../src/session/session.ts';

/** Numbers that look random and are the same in every run (xorshift, Marsaglia 2003, J Stat Softw 8:14). */
function made(seed: number) {
  let state = seed;
  const even = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  /** Nearly normal: the sum of twelve even numbers. */
  const normal = (): number => Array.from({ length: 12 }, even).reduce((a, b) => a + b, -6);
  return { even, normal };
}

const names = [
  ...['Abena', 'Bruno', 'Cosima', 'Dario', 'Edda', 'Farid', 'Greta', 'Hamid', 'Ines', 'Jonas'],
  ...['Kalina', 'Luca', 'Mirela', 'Nils', 'Oona', 'Pavel', 'Quirina', 'Ruben', 'Sanna', 'Teo'],
];
/** The first day of the log, a Monday. */
const start = Date.UTC(2025, 0, 6);
const iso = (day: number): string => new Date(start + day * 86_400_000).toISOString().slice(0, 10);

type Columns = readonly Record<string, Json>[];
type Rows = readonly (readonly (string | number)[])[];

function sheet(session: Session, name: string, label: string, columns: Columns, rows: Rows): void {
  const done = session.execute({ do: 'add-sheet', name, label, columns: columns as never });
  if (!done.ok) throw new Error(done.sentence);
  const typed = columns.filter(({ formula }) => formula === undefined).map((column) => String(column.name));
  const texts = rows.map((row) => row.map(String));
  const put = session.execute({ do: 'set-cells', sheet: name, row: 0, columns: typed, texts });
  if (!put.ok) throw new Error(put.sentence);
}

/** An invented squad: two groups of ten, tested twice on one day, a year of sessions and of monthly maxima with gaps. */
export function squadBook(): Session {
  const { even, normal } = made(20250106);
  const session = Session.create();
  session.execute({ do: 'set-title', title: 'Winter squad, a year' });
  const groupOf = (index: number): string => (index % 2 ? 'evening' : 'morning');
  const text = (name: string, label: string) => ({ name, label, kind: 'text' });
  const measure = (name: string, label: string, unit: string, digits = 1) => ({
    name,
    label,
    kind: 'number',
    unit,
    format: { digits },
  });
  const people = names.map((name, index) => {
    const stature = 172 + 7 * normal();
    const cut = (share: number, sd: number) => (share * stature + sd * normal()).toFixed(1);
    const lengths = [cut(0.233, 1.2), cut(0.243, 1.1), cut(0.304, 1.4)];
    return [name, groupOf(index), stature.toFixed(1), ...lengths, (37 + 5.5 * normal()).toFixed(0)];
  });
  sheet(
    session,
    'roster',
    'Roster',
    [
      text('athlete', 'Athlete'),
      text('team', 'Group'),
      measure('stature', 'Stature', 'cm'),
      measure('femur', 'Femur', 'cm'),
      measure('tibia', 'Tibia', 'cm'),
      measure('trunk', 'Trunk', 'cm'),
      measure('ankle', 'Ankle range', 'deg', 0),
      {
        ...measure('lean', 'Lean at parallel', 'deg', 0),
        formula: 'LEAN.PARALLEL(femur, tibia, trunk, ankle)',
      },
    ],
    people,
  );
  sheet(
    session,
    'retest',
    'Knee to wall, tested twice',
    [
      text('athlete', 'Athlete'),
      text('team', 'Group'),
      measure('test_one', 'First test', 'cm'),
      measure('test_two', 'Second test', 'cm'),
      measure('on_left', 'Left', 'cm'),
      measure('on_right', 'Right', 'cm'),
      measure('later', 'After ten weeks', 'cm'),
    ],
    names.map((name, index) => {
      const truth = 10.5 + 2.6 * normal();
      const one = (more: number) => (truth + more + 0.5 * normal()).toFixed(1);
      return [name, groupOf(index), one(0), one(0.1), one(0.4), one(-0.4), one(index % 2 ? 1.6 : 0.3)];
    }),
  );
  const log: (string | number)[][] = [];
  const maxima: (string | number)[][] = [];
  names.forEach((name, index) => {
    const away = 60 + 11 * index;
    for (let day = 0; day < 364; day++) {
      const ill = day >= away && day < away + 24;
      if (ill || ![0, 2, 4].includes(day % 7) || even() < 0.12) continue;
      const rpe = Math.max(3, Math.min(10, Math.round(6.5 + 1.3 * normal() + 0.8 * Math.sin(day / 26))));
      log.push([iso(day), name, rpe, Math.round(55 + 14 * normal())]);
    }
    for (let month = 0; month < 12; month++) {
      const day = 28 * month + 4;
      const missed = Math.abs(day - away - 12) < 14 && index % 3 === 0;
      const max = 92 + 4 * index + 1.9 * month + 2.4 * normal();
      if (Math.abs(day - away - 12) >= 14 || missed)
        maxima.push([iso(day), name, missed ? '' : max.toFixed(1)]);
    }
  });
  const dated = { name: 'on_day', label: 'Date', kind: 'date' };
  sheet(
    session,
    'sessions',
    'Sessions',
    [
      dated,
      text('athlete', 'Athlete'),
      { name: 'effort', label: 'Effort, 0–10', kind: 'number' },
      measure('minutes', 'Duration', 'min', 0),
      {
        name: 'session_load',
        label: 'Session load',
        kind: 'number',
        formula: 'TRAIN.SESSION(effort, minutes)',
      },
    ],
    log,
  );
  sheet(
    session,
    'maxima',
    'Monthly maxima',
    [dated, text('athlete', 'Athlete'), measure('top', 'Best squat', 'kg')],
    maxima,
  );
  session.execute({
    do: 'add-sheet',
    name: 'relations',
    label: 'Lean and what goes with it',
    purpose: 'worked',
    columns: [
      { name: 'what', label: 'Measure', kind: 'text' },
      { name: 'corr', label: 'r with lean', kind: 'number', format: { digits: 2 } },
      { name: 'slope_of', label: 'Slope', kind: 'number', format: { digits: 3 } },
    ],
  });
  const measures = ['ankle', 'femur', 'trunk'];
  session.execute({
    do: 'set-cells',
    sheet: 'relations',
    row: 0,
    columns: ['what', 'corr', 'slope_of'],
    texts: measures.map((name) => [
      name,
      `=COHORT.R(roster.${name}, roster.lean)`,
      `=COHORT.FIT(roster.${name}, roster.lean)`,
    ]),
  });
  return session;
}

/** Every kind of chart, of the squad. */
export const squadCharts: Readonly<Record<string, Record<string, Json>>> = {
  scatter: {
    title: 'Lean against ankle range',
    kind: 'scatter',
    sheet: 'roster',
    columns: ['ankle', 'lean'],
  },
  agreement: {
    title: 'Second test against the first',
    kind: 'agreement',
    sheet: 'retest',
    columns: ['test_two', 'test_one'],
  },
  pairs: {
    title: 'Knee to wall, ten weeks on',
    kind: 'pairs',
    sheet: 'retest',
    columns: ['test_one', 'later'],
    by: 'team',
    sem: 0.5,
  },
  sides: {
    title: 'Left and right knee to wall',
    kind: 'sides',
    sheet: 'retest',
    columns: ['on_left', 'on_right'],
    sem: 0.5,
  },
  trend: {
    title: 'Best squat over the year',
    kind: 'trend',
    sheet: 'maxima',
    columns: ['on_day', 'top'],
    by: 'athlete',
  },
  'trend-panels': {
    title: 'Best squat, athlete by athlete',
    kind: 'trend',
    sheet: 'maxima',
    columns: ['on_day', 'top'],
    by: 'athlete',
    panels: true,
    sem: 2.4,
  },
  load: {
    title: 'Session load by week',
    kind: 'load',
    sheet: 'sessions',
    columns: ['on_day', 'session_load'],
    by: 'athlete',
  },
  distribution: {
    title: 'Lean at parallel by group',
    kind: 'distribution',
    sheet: 'roster',
    columns: ['lean'],
    by: 'team',
  },
};

/** The squad's book with all its charts, as a file. */
export function squadFile(): string {
  const session = squadBook();
  for (const [key, value] of Object.entries(squadCharts)) {
    const done = session.execute({ do: 'set-part', part: 'charts', key, value });
    if (!done.ok) throw new Error(done.sentence);
  }
  const report = {
    authors: 'A. Nobody, B. Nobody',
    methods:
      'Twenty members of an invented squad were measured in the first week of January. Knee to wall was tested twice on one morning by the same tester, half an hour apart.',
    trials: [{ title: 'Knee to wall (cm)', sheet: 'retest', columns: ['test_one', 'test_two'], form: '3,1' }],
    groups: [
      { sheet: 'roster', columns: ['stature', 'femur', 'tibia', 'trunk', 'ankle', 'lean'], by: 'team' },
      { sheet: 'retest', columns: ['test_one', 'later'], by: 'team' },
    ],
  };
  session.execute({ do: 'set-part', part: 'handouts', key: 'report', value: report });
  return session.save();
}
