import { expect, test } from 'vitest';
import type { Paste } from '../../src/session/commands/paste-text.ts';
import { Session } from '../../src/session/session.ts';
import type { Keeper } from '../../src/worker/keeper.ts';
import { Pasting } from '../../src/worker/pasting.ts';
import type { Work } from '../../src/worker/protocol.ts';

/** A large text is read before it is pasted: bit by bit, to be stopped, and changing nothing. */

const lines = 40_000;
const text = Array.from({ length: lines }, (_, line) => `Lifter ${line}`).join('\n');

function begin() {
  const session = Session.create();
  session.execute({ do: 'add-sheet', name: 'roster', columns: [{ name: 'athlete', kind: 'text' }] });
  const sheet = session.outline().sheets[0]!;
  const told: Work[] = [];
  const pasting = new Pasting({ session } as unknown as Keeper, (work) => told.push(work));
  const paste: Paste = {
    sheet: sheet.id,
    text,
    columns: [sheet.columns[0]!.id],
    runs: [{ row: 0, count: lines }],
    over: { rows: 1, columns: 1 },
  };
  const rows = () => session.outline().sheets[0]!.rows;
  return { session, pasting, paste, told, rows };
}

test('what was read is what the command pastes, in one step', async () => {
  const { session, pasting, paste, told, rows } = begin();
  const before = session.save();
  expect(await pasting.read(paste)).toEqual({ ok: true, lines, width: 1 });
  expect(session.save()).toBe(before);
  expect(told.every(({ done, total }) => done <= total && total === lines)).toBe(true);
  expect(pasting.paste(session, { do: 'paste-text', ...paste })).toMatchObject({ ok: true });
  expect(rows()).toBe(lines);
  const read = session.save();
  session.undo();
  expect(session.save()).toBe(before);
  // As the command does it alone.
  session.execute({ do: 'paste-text', ...paste });
  expect(session.save()).toBe(read);
});

test('stopped, it answers so and leaves nothing to be pasted', async () => {
  const { session, pasting, paste, rows } = begin();
  const reading = pasting.read({ ...paste, text: Array(10).fill(text).join('\n') });
  pasting.stop();
  expect(await reading).toMatchObject({
    ok: false,
    sentence: expect.stringContaining('nothing was changed'),
  });
  expect(pasting.paste(session, { do: 'paste-text', ...paste })).toBeUndefined();
  expect(rows()).toBe(0);
});

test('what was read is left aside when the book changed, or when another text is pasted; a refusal comes before', async () => {
  const { session, pasting, paste } = begin();
  await pasting.read(paste);
  expect(pasting.paste(session, { do: 'paste-text', ...paste, text: 'other' })).toBeUndefined();
  await pasting.read(paste);
  session.execute({ do: 'add-rows', sheet: paste.sheet, row: 0, count: 1 });
  expect(pasting.paste(session, { do: 'paste-text', ...paste })).toBeUndefined();
  expect(await pasting.read({ ...paste, text: `${text}\twide` })).toMatchObject({
    ok: false,
    sentence: expect.stringContaining('2 columns wide'),
  });
});
