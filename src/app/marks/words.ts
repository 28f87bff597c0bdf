import type { ColumnOutline } from '../../session/api.ts';
import type { MarksOutline } from '../../session/marks/words.ts';
import { characters } from './tones.ts';

/** What the marks of a column mean, a line each. */
export function marksInWords({ marks }: Pick<ColumnOutline, 'marks'>): readonly string[] {
  if (!marks) return [];
  return [
    ...marks.rules.map(({ tone, says, when }) => `${characters[tone]} ${says}, where ${when}`),
    ...drawnInWords(marks),
  ];
}

export const drawnInWords = ({ scale, trend }: MarksOutline): readonly string[] => [
  ...(scale ? ['The bar shows each value on the scale of the column'] : []),
  ...(trend === 'columns' ? ['The line goes through the row’s values of some columns'] : []),
  ...(trend === 'log' ? ['The line goes through the values that a log holds of the row, by date'] : []),
];
