import type { ColumnOutline } from '../../session/api.ts';
import type { MarksOutline } from '../../session/marks/mark-words.ts';
import { characters } from './tones.ts';

/** What the marks of a column mean, a line each. */
export function marksInWords({ marks }: Pick<ColumnOutline, 'marks'>): readonly string[] {
  if (!marks) return [];
  return [
    ...marks.rules.map(({ tone, says, when }) => `${characters[tone]} ${says}, where ${when}`),
    ...drawnInWords(marks),
  ];
}

const drawnInWords = ({ scale, trend }: MarksOutline): readonly string[] => [
  ...(scale ? ['The bar shows each value on the column’s scale'] : []),
  ...(trend === 'columns' ? ['The line shows this row’s values in several columns'] : []),
  ...(trend === 'log' ? ['The line shows this row’s values in a log, by date'] : []),
];
