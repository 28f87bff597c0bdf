/** A formula in A1 references: texts, and between them the rows it reads, counted from the row it stands in. */
export type A1Formula = readonly (string | number)[];

/** The formula as it stands in a row, without "="; undefined where it would read what lies above the data. */
export function a1Text(formula: A1Formula, row: number, above: number): string | undefined {
  let text = '';
  for (const piece of formula) {
    if (typeof piece === 'string') text += piece;
    else if (row + piece < 0) return undefined;
    else text += String(row + piece + above + 1);
  }
  return text;
}
