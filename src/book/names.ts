/** Names are the same in any case. */
export const nameKey = (name: string): string => name.toLowerCase();

const IDENTIFIER = /^[\p{L}_][\p{L}\p{M}\p{N}_]*$/u;
const ADDRESS = /^[A-Za-z]{1,3}[0-9]+$/;
/** Words that the formula language reads as something else. */
const TAKEN_WORDS = new Set(['true', 'false']);
export const LONGEST_NAME = 64;

/**
 * Why a text cannot be the name of a column, a sheet or a cell, one sentence with a name that could; undefined when it
 * can. Whether a function has that name already is for the formula language to say.
 */
export function nameProblem(name: string): string | undefined {
  const proposal = `Try "${properName(name)}".`;
  if (name === '') return 'A name needs at least one letter.';
  if (name.length > LONGEST_NAME)
    return `A name has at most ${LONGEST_NAME} characters; this one has ${name.length}. ${proposal}`;
  if (!IDENTIFIER.test(name))
    return `"${name}" cannot be a name: names are made of letters, digits and _, and start with a letter. ${proposal}`;
  if (ADDRESS.test(name)) return `"${name}" reads as the address of a cell. ${proposal}`;
  if (TAKEN_WORDS.has(nameKey(name))) return `"${name}" is a fixed value in formulas. ${proposal}`;
  return undefined;
}

/** A name made from any text: `Knee to wall (cm)` gives `knee_to_wall_cm`, `leg1` gives `leg_1`. Never one of `taken`. */
export function properName(text: string, taken: (name: string) => boolean = () => false): string {
  let name = text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '_')
    .replace(/^_+|_+$/g, '')
    .slice(0, LONGEST_NAME - 4);
  if (name === '' || !/^[\p{L}_]/u.test(name)) name = `n_${name}`.replace(/_$/, '');
  if (ADDRESS.test(name)) name = name.replace(/^([a-z]+)/, '$1_');
  if (TAKEN_WORDS.has(name)) name = `${name}_`;
  if (!taken(name)) return name;
  for (let i = 2; ; i++) if (!taken(`${name}_${i}`)) return `${name}_${i}`;
}
