/**
 * A pasted block laid into what is chosen: a single value goes into every chosen cell, a block that fits several times
 * is repeated, any other goes once from the first cell.
 */
export function spread(
  block: readonly (readonly string[])[],
  rows: number,
  columns: number,
): readonly (readonly string[])[] {
  const height = block.length;
  const width = widthOf(block);
  const down = rows > height && rows % height === 0 ? rows / height : 1;
  const across = columns > width && columns % width === 0 ? columns / width : 1;
  if (down === 1 && across === 1) return block;
  const lines: string[][] = [];
  for (let d = 0; d < down; d++)
    for (const row of block) {
      const padded = [...row, ...new Array<string>(width - row.length).fill('')];
      lines.push(Array.from({ length: across }, () => padded).flat());
    }
  return lines;
}

/** Fields of the longest line. */
export function widthOf(block: readonly (readonly string[])[]): number {
  // Not Math.max over all of them: a hundred thousand arguments are more than a call takes.
  return block.reduce((most, row) => Math.max(most, row.length), 0);
}
