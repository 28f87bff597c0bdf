import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

/** From numpy and scipy by `reliability_sample.py`, by the formulas and papers named there. */
type Expected = Readonly<Record<string, string | number | null>> & {
  readonly form: string;
  readonly confidence: number;
  readonly design: string;
};
const cases: readonly Expected[] = JSON.parse(
  readFileSync('tests/reference/reliability_sample.json', 'utf8'),
);

const book = () => readFileSync('sample-books/wall-test-reliability.leverbook.json', 'utf8');

describe('the reliability sample’s own sheet', () => {
  test.each([
    ['2,1', 0.95],
    ['2,k', 0.95],
    ['3,1', 0.9],
  ])('has ICC, both standard errors and limits for form %s at confidence %s', (form, confidence) => {
    const session = Session.open(book());
    const settings = session.outline().sheets.find(({ name }) => name === 'assumptions')!.id;
    const set = (row: number, column: string, text: string) =>
      expect(
        session.execute({ do: 'set-cells', sheet: settings, row, columns: [column], texts: [[text]] }).ok,
      ).toBe(true);
    set(0, 'word', form);
    set(1, 'amount', String(confidence));
    const rows = [...session.records('reliability')].map(({ values }) => values);
    const wanted = cases.filter((one) => one.form === form && one.confidence === confidence);
    expect(wanted).toHaveLength(4);
    for (const { form: _, confidence: __, n: ___, design, ...values } of wanted) {
      const row = rows.find((one) => one.design === design)!;
      for (const [name, value] of Object.entries(values))
        if (value === null) expect([design, name, row[name]]).toEqual([design, name, '']);
        else expect(Number(row[name]) / Number(value), `${design}: ${name}`).toBeCloseTo(1, 10);
    }
  });

  test('doubts nothing about its dimensions', () => {
    expect(
      Session.open(book())
        .doubts()
        .filter(({ about }) => about === 'dimension' || about === 'error'),
    ).toEqual([]);
  });

  test('names each standard error of measurement by its kind', () => {
    const sheet = Session.open(book())
      .outline()
      .sheets.find(({ name }) => name === 'reliability')!;
    const labels = sheet.columns.map(({ label }) => label);
    expect(labels.filter((label) => /SEM|MDC/.test(label))).toEqual([
      'SEM, consistency',
      'MDC, consistency',
      'SEM, agreement',
      'MDC, agreement',
    ]);
  });
});
