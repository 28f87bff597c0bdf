// What becomes of rows of a file that the sheet has with other values: the words of --on-conflict.
import { InvalidArgumentError, Option } from 'commander';
import { Refusal } from './exit.ts';

/** As the import has it: the sheet's values stay, the file's replace them, or the rows are added. */
export type OnConflict = 'leave' | 'take' | 'add';

const words: Readonly<Record<string, OnConflict>> = { keep: 'leave', overwrite: 'take', append: 'add' };

/** The option's words; the words of --differing are read too, for one release. @throws InvalidArgumentError */
const read = (text: string): OnConflict => {
  const own = Object.hasOwn(words, text) ? words[text] : Object.values(words).find((word) => word === text);
  if (own) return own;
  throw new InvalidArgumentError(`Accepted: ${Object.keys(words).join(', ')}.`);
};

export const onConflictOption = (): Option =>
  new Option(
    '--on-conflict <keep|overwrite|append>',
    'for rows already in the sheet with other values: keep the sheet values, overwrite them with the file values, or append the rows as new ones',
  ).argParser(read);

/** Read for one release after 0.1.0, and left out of the help. */
export const differingOption = (): Option =>
  new Option('--differing <leave|take|add>').argParser(read).hideHelp();

/** What was decided, by either name. @throws Refusal where the two say different things */
export function onConflict(options: {
  readonly onConflict?: OnConflict;
  readonly differing?: OnConflict;
}): OnConflict | undefined {
  const { onConflict, differing } = options;
  if (onConflict && differing && onConflict !== differing)
    throw new Refusal(
      '--differing is the former name of --on-conflict, and the two differ. Give --on-conflict only.',
    );
  return onConflict ?? differing;
}
