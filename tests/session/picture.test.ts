import { describe, expect, test } from 'vitest';
import { observedSheet } from '../../src/session/picture/columns.ts';
import { postureOver } from '../../src/session/picture/over.ts';
import { facingOf, type Observation } from '../../src/session/picture/points.ts';
import { readingsOf } from '../../src/session/picture/readings.ts';
import { Session } from '../../src/session/session.ts';

/** A lifter drawn on squared paper, 10 units for 1 cm, y down: a 3-4-5 trunk, a 45° shin, a level thigh. */
const seen: Observation = {
  points: {
    toe: { x: 600, y: 900 },
    heel: { x: 340, y: 900 },
    ankle: { x: 400, y: 850 },
    knee: { x: 700, y: 550 },
    hip: { x: 300, y: 550 },
    shoulder: { x: 600, y: 150 },
    bar: { x: 490, y: 160 },
    scale_1: { x: 100, y: 100 },
    scale_2: { x: 550, y: 100 },
  },
  facing: 'right',
  line: 'floor',
  length: 45,
  camera: null,
  nearer: 0,
  file: 'paper.png',
  hash: 'ab'.repeat(32),
  time: null,
};
const value = (id: string, of = seen) => readingsOf(of).list.find((one) => one.id === id)!;

describe('readings of a side picture', () => {
  test('are the angles of the lines on squared paper, and their errors those of 1 cm', () => {
    expect(value('lean').value).toBeCloseTo((Math.atan2(3, 4) * 180) / Math.PI, 9);
    expect(value('shin').value).toBeCloseTo(45, 9);
    expect(value('depth').value).toBeCloseTo(0, 9);
    expect(value('knee').value).toBeCloseTo(135, 9);
    expect(value('ahead').value).toBeCloseTo(2, 9);
    expect(readingsOf(seen).scale).toBeCloseTo(0.1, 12);
    // hip to shoulder is 50 cm long: atan(√2/50)
    expect(value('lean').error).toBeCloseTo((Math.atan(Math.SQRT2 / 50) * 180) / Math.PI, 9);
  });
  test('say which points are missing, and need no scale for angles', () => {
    const { hip: _, scale_1: __, ...points } = seen.points;
    const open = { ...seen, points };
    expect(value('lean', open)).toMatchObject({ value: null, why: 'Place hip.' });
    expect(value('hip', open).why).toBe('Place hip.');
    expect(value('shin', open)).toMatchObject({ error: null });
    expect(value('shin', open).value).toBeCloseTo(45, 9);
    expect(value('ahead', open).why).toBe('Mark a known length.');
  });
  test('facing is where the toe is', () => {
    expect(facingOf(seen.points)).toBe('right');
    expect(facingOf({ toe: { x: 1, y: 1 }, heel: { x: 5, y: 1 } })).toBe('left');
    expect(facingOf({ toe: { x: 1, y: 1 } })).toBeNull();
  });
});

test('a posture is laid over the picture to scale, facing left and turned', () => {
  const none = [0, 0] as const;
  const posture = {
    heel: [-13, 0],
    toe: [13, 0],
    ball: none,
    ankle: none,
    knee: none,
    hip: [-20, 40],
    shoulder: none,
    bar: none,
  } as const;
  const feet = { heel: { x: 600, y: 900 }, toe: { x: 340, y: 900 } };
  const flat = postureOver(posture, feet, 0.1, 0, 'left')!;
  expect(flat.hip).toEqual({ x: 670, y: 500 });
  expect(flat.heel.x).toBeCloseTo(600, 9);
  // a quarter of a right angle clockwise: up goes to the right
  const turned = postureOver(posture, feet, 0.1, 30, 'left')!;
  expect(turned.hip.x).toBeCloseTo(470 + 200 * Math.cos(Math.PI / 6) + 400 * Math.sin(Math.PI / 6), 9);
  expect(turned.hip.y).toBeCloseTo(900 + 200 * Math.sin(Math.PI / 6) - 400 * Math.cos(Math.PI / 6), 9);
  expect(postureOver(posture, {}, 0.1, 0, 'left')).toBeNull();
});

describe('points saved in a row', () => {
  const open = () => {
    const session = Session.create();
    const run = (command: Parameters<Session['execute']>[0]) => {
      const done = session.execute(command);
      if (!done.ok) throw new Error(done.sentence);
      return done.outline;
    };
    const outline = run(observedSheet([]));
    return { session, run, sheet: outline.sheets.find(({ name }) => name === 'observed')! };
  };

  test('come back as they were placed; formulas follow; undo takes all of it back', () => {
    const { session, run, sheet } = open();
    const before = session.save();
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    expect(session.picture(sheet.id, 0, seen.hash)).toMatchObject({ seen, same: [{ row: 0 }], missing: [] });
    const lean = session.evaluate('INDEX(observed.observed_lean, 1)');
    expect(lean).toBeCloseTo((Math.atan2(3, 4) * 180) / Math.PI, 9);
    session.undo();
    expect(session.save()).toBe(before);
  });

  test('the parts of the lean are blank without a build, and add up to the observed lean with one', () => {
    const { session, run, sheet } = open();
    const column = (name: string) => sheet.columns.find((one) => one.name === name)!.id;
    const parts = ['reference', 'femur', 'tibia', 'trunk', 'ankle', 'use', 'balance'];
    const at = (name: string) => session.evaluate(`INDEX(observed.${name}, 1)`);
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    expect(at('from_use')).toBe('');
    run({
      do: 'set-cells',
      sheet: sheet.id,
      row: 0,
      columns: ['femur', 'tibia', 'trunk', 'ankle', 'lift'].map(column),
      texts: [['42', '41', '51', '38', '1']],
    });
    expect(at('ankle_used')).toBeTypeOf('number');
    const sum = parts.reduce((total, part) => total + Number(at(`from_${part}`)), 0);
    expect(sum).toBeCloseTo(Number(at('observed_lean')), 9);
    // formulas of lengths, angles and squares of lengths: no unit is mixed up
    expect(session.doubts().map(({ sentence }) => sentence)).toEqual([]);
  });

  test('a frame of its own row takes the athlete and heel lift along', () => {
    const { session, run, sheet } = open();
    const column = (name: string) => sheet.columns.find((one) => one.name === name)!.id;
    run({
      do: 'set-cells',
      sheet: sheet.id,
      row: 0,
      columns: [column('athlete'), column('lift')],
      texts: [['Ivo Marten', '1.9']],
    });
    run({ do: 'save-points', sheet: sheet.id, row: 0, like: 0, seen: { ...seen, time: 1.25 } });
    expect(session.picture(sheet.id, 1)).toMatchObject({ title: 'Ivo Marten', seen: { time: 1.25 } });
    expect(session.picture(sheet.id, 0).seen).toBeNull();
  });

  // By hand: atan(3/4) = 36.8699° and atan(330/400) = 39.5226°; a pair's SEM is |d|/√2 = 2.6527°/1.41421 = 1.8757°
  // (Bland & Altman 1996, BMJ 313:744: within-subject standard deviation).
  test('placed again, the pair gives the standard error of one digitising; another frame is none', () => {
    const { session, run, sheet } = open();
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    expect(session.picture(sheet.id, 0).twice).toBeNull();
    const shoulder = { x: 630, y: 150 };
    run({
      do: 'save-points',
      sheet: sheet.id,
      row: 0,
      like: 0,
      seen: { ...seen, points: { ...seen.points, shoulder } },
    });
    run({ do: 'save-points', sheet: sheet.id, row: 0, like: 0, seen: { ...seen, time: 2 } });
    const { twice } = session.picture(sheet.id, 0);
    expect(twice).toMatchObject({ frames: 1, sem: { shin: 0, depth: 0 } });
    expect(twice!.sem.observed_lean).toBeCloseTo(1.8757, 3);
  });

  test('follow their columns when those are renamed', () => {
    const { session, run, sheet } = open();
    const id = sheet.columns.find(({ name }) => name === 'hip_x')!.id;
    run({ do: 'change-column', sheet: sheet.id, column: id, change: { name: 'trochanter_x' } });
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    expect(session.picture(sheet.id, 0).seen).toEqual(seen);
  });

  test('a small copy is saved with the picture, follows its rows, comes back from the file, and is undone', () => {
    const { session, run, sheet } = open();
    // 4 base64 characters are 3 bytes, "/9j/" the first three of any JPEG (RFC 4648; ITU-T T.81, B.2).
    const copy = { width: 4000, height: 3000, jpeg: '/9j/'.repeat(40_000) };
    const none = session.execute({ do: 'save-copy', sheet: sheet.id, row: 0, copy });
    expect(none).toMatchObject({ ok: false, sentence: expect.stringContaining('Save its points first') });
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    const before = session.save();
    expect(session.picture(sheet.id, 0)).toMatchObject({ copy: null, copies: { count: 0, bytes: 0 } });
    run({ do: 'save-copy', sheet: sheet.id, row: 0, copy });
    expect(session.picture(sheet.id, 0)).toMatchObject({
      copy: { ...copy, bytes: 120_000 },
      copies: { count: 1, bytes: 120_000 },
    });
    // a second row of the same picture shows the same copy; another frame has none
    run({ do: 'save-points', sheet: sheet.id, row: 0, like: 0, seen });
    run({ do: 'save-points', sheet: sheet.id, row: 0, like: 0, seen: { ...seen, time: 2 } });
    expect([1, 2].map((row) => session.picture(sheet.id, row).copy?.bytes)).toEqual([120_000, undefined]);
    const again = Session.open(session.save());
    expect(again.picture(sheet.id, 0).copy).toMatchObject(copy);
    for (let i = 0; i < 3; i++) session.undo();
    expect(session.save()).toBe(before);
    session.redo();
    run({ do: 'save-copy', sheet: sheet.id, row: 0, copy: null });
    expect(session.save()).toBe(before);
    session.undo();
    run({ do: 'remove-copies' });
    expect(session.save()).toBe(before);
    expect(session.execute({ do: 'remove-copies' }).ok).toBe(false);
  });

  test('a copy above 200 kB or of another kind of text is refused; one that a file spoilt counts as none', () => {
    const { session, run, sheet } = open();
    run({ do: 'save-points', sheet: sheet.id, row: 0, seen });
    const tried = (jpeg: string, width = 4000) =>
      session.execute({ do: 'save-copy', sheet: sheet.id, row: 0, copy: { width, height: 3000, jpeg } }).ok;
    expect(tried('/9j/'.repeat(66_668))).toBe(false);
    expect(tried('<svg onload=alert(1)>')).toBe(false);
    expect(tried('/9j/', 1e9)).toBe(false);
    run({ do: 'set-part', part: 'pictures', key: seen.hash, value: { jpeg: 'no picture' } });
    expect(session.picture(sheet.id, 0).copy).toBeNull();
    expect(session.picture(sheet.id, 0).seen).toEqual(seen);
  });

  test('a sheet without the columns is refused with their names, and wild numbers by the schema', () => {
    const { session } = open();
    const done = session.execute({
      do: 'add-sheet',
      name: 'bare',
      columns: [{ name: 'athlete', kind: 'text' }],
    });
    const bare = done.ok ? done.outline.sheets.find(({ name }) => name === 'bare')! : null;
    const refused = session.execute({ do: 'save-points', sheet: bare!.id, row: 0, seen });
    expect(refused).toMatchObject({ ok: false, sentence: expect.stringContaining('Facing, Toe x') });
    const sheet = session.outline().sheets.find(({ name }) => name === 'observed')!;
    expect(
      session.execute({ do: 'save-points', sheet: sheet.id, row: 0, seen: { ...seen, length: 0 } }).ok,
    ).toBe(false);
  });
});
