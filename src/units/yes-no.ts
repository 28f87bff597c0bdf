/** Reads yes and no as people write them. */
const YES = new Set(['yes', 'y', 'true', 't', '1', 'x', '✓', '✔', 'on']);
const NO = new Set(['no', 'n', 'false', 'f', '0', 'off']);

/** Yes or no as people write it, in any case, or undefined. */
export function readYesNo(text: string): boolean | undefined {
  const word = text.trim().toLowerCase();
  return YES.has(word) ? true : NO.has(word) ? false : undefined;
}

export const writeYesNo = (value: boolean): string => (value ? 'yes' : 'no');
