import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { buildCommand, folder, leverbook } from './run.ts';

beforeAll(() => buildCommand());

test('leverbook check lists what is to be checked in a book by cause, with a count', () => {
  const session = Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
  const sheet = session.outline().sheets[0]!;
  const clear = (row: number, name: string) => {
    const column = sheet.columns.find((one) => one.name === name)!.id;
    session.execute({ do: 'clear-cells', sheet: sheet.id, row, rows: 1, columns: [column] });
  };
  clear(3, 'wall_left');
  clear(5, 'wall_right');
  const path = join(folder(), 'club.leverbook.json');
  writeFileSync(path, session.save());
  const ran = leverbook(['check', path]);
  expect(ran.code, ran.err).toBe(0);
  expect(ran.out).toContain('2 to check');
  expect(ran.out).toContain('Missing measures: 2');
  expect(ran.out).toMatch(
    /Roster, Knee to wall, left, row 4: .*Knee to wall, left is blank; \d+ results are pending\./,
  );
  expect(ran.out).not.toContain('Errors');
});
