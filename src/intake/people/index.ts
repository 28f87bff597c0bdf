/** Who the people of a file are among those that the book knows. */
export { guessWho, isRoster, settleWho } from './people.ts';
export type { WhoReport } from './who.ts';
