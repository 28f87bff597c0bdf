import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

/**
 * As many columns as a sheet takes, each one more than the one before it by a formula with many parts in one another: in
 * that order, in the opposite one, or each reading the next with the last reading the first.
 */
function chain(direction: 'forwards' | 'backwards' | 'in a circle', n = 2_000): string {
  const columns = Array.from({ length: n }, (_, i) => {
    const before = `col_${(i + n - 1) % n}`;
    const content =
      i === 0 && direction !== 'in a circle' ? { cells: [1, 2, 3] } : { formula: deep(`${before}+1`) };
    return { name: `col_${i}`, kind: 'number', ...content };
  });
  if (direction === 'backwards') columns.reverse();
  return JSON.stringify({
    leverbook: 1,
    title: 'Chain',
    sheets: [{ name: 's', purpose: 'worked', rows: 3, columns }],
  });
}

/** The same value through twelve calls. */
const deep = (formula: string): string => `${'IF(TRUE,'.repeat(12)}${formula}${')'.repeat(12)}`;

test('2,000 columns in a circle open, are told as one circle, and mend when it is broken', () => {
  const session = Session.open(chain('in a circle'));
  expect(session.doubts()).toMatchObject([{ about: 'cycle' }]);
  const check = session.check('col_1999*2', { sheet: 's', column: 'col_1999' });
  expect(check.ok).toBe(true);
  expect(session.execute({ do: 'set-formula', sheet: 's', column: 'col_0', formula: '1' } as never).ok).toBe(
    true,
  );
  expect(session.doubts()).toEqual([]);
  expect(Session.open(session.save()).doubts()).toEqual([]);
});

describe.each(['forwards', 'backwards'] as const)('a chain of 2,000 columns, %s', (direction) => {
  test('opens, computes, is asked about, changed, and opens again', () => {
    const session = Session.open(chain(direction));
    const last = () => session.ask(({ calculation }) => calculation.value('s', 'col_1999', 2));
    expect(last()).toBe(2002);
    expect(session.doubts()).toEqual([]);
    session.ask(({ calculation }) => {
      expect(calculation.check('col_1999*2', { sheet: 's', column: 'col_1999' }).ok).toBe(true);
      calculation.precedents({ sheet: 's', column: 'col_1999' });
      calculation.dependents({ sheet: 's', column: 'col_0', row: 0 });
    });
    const edits = [
      { do: 'set-cells', sheet: 's', row: 2, columns: ['col_0'], texts: [['5']] },
      { do: 'set-formula', sheet: 's', column: 'col_1', formula: 'col_0+2' },
      {
        do: 'change-column',
        sheet: 's',
        column: 'col_1',
        change: { name: 'renamed', dimension: 'length' },
      },
    ];
    for (const edit of edits) {
      const done = session.execute(edit as never);
      expect(done, JSON.stringify(done).slice(0, 300)).toMatchObject({ ok: true });
    }
    expect(last()).toBe(2005);
    const again = Session.open(session.save());
    expect(again.ask(({ calculation }) => calculation.value('s', 'col_1999', 2))).toBe(2005);
  });
});
