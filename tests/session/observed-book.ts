/** A book with a roster of lifters and a sheet of their observed squats, typed in as a coach would. */
import { Session } from '../../src/session/session.ts';

const rosterRows: readonly (readonly string[])[] = [
  ['Ada', '44', '39', '50', '36', '26'],
  ['Bo', '40', '42', '53', '41', '27'],
];

/** Squats: athlete, day, lean, shin angle, depth. */
export function observedBook(squats: readonly (readonly string[])[]): Session {
  const session = Session.create();
  const run = (command: Parameters<Session['execute']>[0]) => {
    const done = session.execute(command);
    if (!done.ok) throw new Error(done.sentence);
  };
  const measures = ['femur', 'tibia', 'trunk', 'ankle', 'foot'];
  run({
    do: 'add-sheet',
    name: 'roster',
    columns: [{ name: 'athlete', kind: 'text' }, ...measures.map((name) => ({ name }))],
  });
  run({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', ...measures],
    texts: rosterRows.map((row) => [...row]),
  });
  const seen = ['observed_lean', 'shin', 'depth'];
  run({
    do: 'add-sheet',
    name: 'squats',
    columns: [
      { name: 'athlete', kind: 'text' },
      { name: 'filmed', kind: 'date' },
      ...measures.map((name) => ({
        name,
        formula: `INDEX(roster.${name}, MATCH(athlete, roster.athlete, 0))`,
      })),
      ...seen.map((name) => ({ name })),
    ],
  });
  run({
    do: 'set-cells',
    sheet: 'squats',
    row: 0,
    columns: ['athlete', 'filmed', ...seen],
    texts: squats.map((squat) => [...squat]),
  });
  return session;
}
