/** Most characters of a sheet's name in a workbook file. */
const LONGEST = 31;

/** Names for sheets as a workbook file may have them: none of `[ ] : * ? / \`, none twice in any case. */
export function sheetNames(labels: readonly string[]): readonly string[] {
  // The name of a list of changes that some programs keep.
  const taken = new Set(['history']);
  return labels.map((label) => {
    const plain = label
      .replace(/[[\]:*?/\\\p{Cc}]+/gu, ' ')
      .replace(/\s+/g, ' ')
      .replace(/^[' ]+|[' ]+$/g, '');
    const base = cut(plain, LONGEST) || 'Sheet';
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${cut(base, LONGEST - ` ${n}`.length)} ${n}`;
    taken.add(name.toLowerCase());
    return name;
  });
}

/** The first `most` UTF-16 units, without half a character or a blank or apostrophe at the end. */
const cut = (text: string, most: number): string =>
  text.length <= most
    ? text
    : text
        .slice(0, most)
        .replace(/[\uD800-\uDBFF]$/, '')
        .replace(/[' ]+$/, '');

/** A sheet as a reference begins with it. */
export const sheetPrefix = (name: string): string => `'${name.replaceAll("'", "''")}'!`;

/** True for a name that a workbook file may give to a cell: it must not read as an address, `R1C1` style included. */
export const mayBeDefined = (name: string): boolean =>
  /^[\p{L}_][\p{L}\p{N}_.]{0,254}$/u.test(name) &&
  !/^[A-Za-z]{1,3}[0-9]+$/.test(name) &&
  !/^(r[0-9]*)?(c[0-9]*)?$/i.test(name) &&
  !/^(true|false)$/i.test(name);
