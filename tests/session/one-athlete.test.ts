import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chartOf } from '../../src/session/charts/chart.ts';
import { handoutsOf } from '../../src/session/handouts/handouts.ts';
import { Session } from '../../src/session/session.ts';

const sample = () =>
  Session.open(
    readFileSync(new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
  );
/** Rows of a sheet by athlete. */
const rowsOf = (session: Session, sheet: string, name: unknown): number[] =>
  [...session.records(sheet)].filter(({ values }) => values.athlete === name).map(({ row }) => row);

describe('one athlete on all sheets', () => {
  test('a row of the log and of a later test shows the figure that the roster gives the athlete', () => {
    const session = sample();
    for (const sheet of ['sessions', 'retest']) {
      const { row, values } = [...session.records(sheet)].at(-1)!;
      const [home] = rowsOf(session, 'roster', values.athlete);
      const figure = session.figure(sheet, row);
      expect(figure).toEqual({ ...session.figure('roster', home!), of: 'Roster' });
      expect(figure.title).toBe(values.athlete);
      expect(figure.missing).toEqual([]);
    }
    expect(session.figure('roster', 0).of).toBeNull();
  });

  test('handouts asked for on rows of the log are the pages of their athletes, each once', () => {
    const session = sample();
    const all = [...session.records('sessions')];
    const rows = [0, 1, all.length - 1];
    const names = [...new Set(rows.map((row) => all[row]!.values.athlete))];
    const { sheet, handouts } = session.ask((context) => handoutsOf(context, { sheet: 'sessions', rows }));
    expect(sheet).toBe('roster');
    expect(handouts.map(({ athlete }) => athlete)).toEqual(names);
  });

  test('a chart draws one person, by name or as the athlete of a row of any sheet', () => {
    const session = sample();
    const chart = {
      title: 'Load',
      kind: 'trend',
      sheet: 'sessions',
      columns: ['on_day', 'load'],
      by: 'athlete',
    };
    session.execute({ do: 'set-part', part: 'charts', key: 'one', value: chart });
    const everyone = session.ask((context) => chartOf(context, 'one'));
    expect(everyone.person).toBeNull();
    const name = everyone.people[3]!;
    const one = session.ask((context) => chartOf(context, 'one', { name }));
    expect(one.person).toBe(name);
    expect(one.people).toEqual(everyone.people);
    // The title says whose the only drawing is; a second title would lie over the axis.
    expect(one.title).toBe(`Load: ${name}`);
    const small = session.ask((context) => chartOf(context, 'chart_5', { name }));
    expect(small.record.panels).toBe(true);
    expect(small.panels.map(({ title }) => title)).toEqual(['']);
    const drawn = one.panels.flatMap(({ points }) => points);
    const own = everyone.panels.flatMap(({ points }) => points).filter((point) => point.name === name);
    expect(drawn.map(({ x, y, row }) => ({ x, y, row }))).toEqual(
      own.map(({ x, y, row }) => ({ x, y, row })),
    );
    expect(drawn.length).toBeGreaterThan(3);
    const [row] = rowsOf(session, 'roster', name);
    expect(session.ask((context) => chartOf(context, 'one', { sheet: 'roster', row: row! }))).toEqual(one);
    const nobody = session.ask((context) => chartOf(context, 'one', { name: 'Nobody' }));
    expect(nobody.needs).toBe('Training log shows no row of Nobody. Select another person.');
  });
});
