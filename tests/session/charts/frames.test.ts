import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chartOf } from '../../../src/session/charts/chart.ts';
import { drawPanel } from '../../../src/session/charts/drawing/panel.ts';
import { sizeFor } from '../../../src/session/charts/drawing/places.ts';
import { Session } from '../../../src/session/session.ts';

const sample = () =>
  Session.open(
    readFileSync(new URL('../../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
  );
const chart = (session: Session, kind: string, columns: string[], more: object = { by: 'athlete' }) => {
  const value = { title: kind, kind, sheet: 'observed', columns, ...more };
  const done = session.execute({ do: 'set-part', part: 'charts', key: 'c', value });
  if (!done.ok) throw new Error(done.sentence);
  return session.ask((context) => chartOf(context, 'c'));
};

describe('frames of a film', () => {
  // By hand: x̄ = 3, ȳ = 42.2, Sxy = 11, Sxx = 10, residual sum of squares 2.7, see² = .9, se = .3,
  // t(.975, 3) = 3.182446 (Student's t, Fisher & Yates, Statistical Tables, 1963, table III).
  test('the slope over repetitions has the interval of the textbook', () => {
    const session = Session.create();
    const columns = [
      { name: 'repetition' },
      { name: 'observed_lean', dimension: 'angle', unit: 'deg' },
    ] as const;
    session.execute({ do: 'add-sheet', name: 'observed', columns: [...columns] });
    const drawn = (texts: string[][]) => {
      session.execute({
        do: 'set-cells',
        sheet: 'observed',
        row: 0,
        columns: ['repetition', 'observed_lean'],
        texts,
      });
      return chart(session, 'repetitions', ['repetition', 'observed_lean'], {});
    };
    const few = drawn([
      ['1', '40'],
      ['2', '41'],
    ]);
    expect(few.panels[0]!.lines).toEqual([]);
    expect(few.notes[0]).toBe('All: 2 repetitions; a slope and its interval need 3 different ones.');
    const found = drawn([
      ['1', '40'],
      ['2', '41'],
      ['3', '43'],
      ['4', '42'],
      ['5', '45'],
    ]);
    expect(found.notes[0]).toBe(
      'All: 1.1° per repetition over 5 repetitions (95 % interval 0.145° to 2.05°).',
    );
    const [[x, from] = [], [to, until] = []] = found.panels[0]!.lines[0]!.at;
    expect([x, to]).toEqual([1, 5]);
    expect(from).toBeCloseTo(40, 9);
    expect(until).toBeCloseTo(44.4, 9);
  });

  test('over repetitions the sample’s set has one point each, a line and its slope in words', () => {
    const session = sample();
    const data = chart(session, 'repetitions', ['repetition', 'observed_lean']);
    const rows = [...session.records('observed')].filter(
      ({ values }) => values.athlete === 'Bram Oduya' && typeof values.repetition === 'number',
    );
    const [panel] = data.panels;
    const set = panel!.points.filter(({ note }) => note?.includes('2025-11-05') || note?.includes('5 Nov'));
    expect(set.map(({ x }) => x).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    for (const { row, y } of panel!.points)
      expect(y).toBe(rows.find((one) => one.row === row)!.values.observed_lean);
    // The film of one repetition has many frames: its deepest alone is drawn, and one point has no line.
    expect(panel!.points).toHaveLength(9);
    expect(panel!.lines).toHaveLength(1);
    expect(data.notes[0]).toMatch(/^Bram Oduya, .* over 8 repetitions.*95 % interval/);
  });

  test('the bar path joins the frames of one repetition in the order of time, with mid-foot at 0', () => {
    const session = sample();
    const data = chart(session, 'bar-path', ['bar_ahead', 'bar_height'], { by: 'athlete', panels: true });
    const panel = data.panels.find(({ title }) => title === 'Bram Oduya')!;
    const frames = [...session.records('observed')]
      .filter(({ values }) => values.athlete === 'Bram Oduya' && typeof values.repetition === 'number')
      .filter(({ values }) => (values.frame_time as number) > 28);
    const path = panel.lines.find(({ is, at }) => is === 'trend' && at.length > 2)!;
    expect(path.at).toEqual(frames.map(({ values }) => [values.bar_ahead, values.bar_height]));
    const foot = panel.lines.find(({ is }) => is === 'mid-foot')!;
    expect(foot.at.map(([x]) => x)).toEqual([0, 0]);
    const drawn = drawPanel(data, panel, sizeFor(data, 600));
    expect(JSON.stringify(drawn.shape)).not.toContain('NaN');
  });
});
