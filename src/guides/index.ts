/** The guides, in the order in which they are offered. */
import { coach } from './coach.ts';
import type { Guide } from './guide.ts';
import { lifter } from './lifter.ts';
import { researcher } from './researcher.ts';

export type { Guide, Part, Piece, Show, Step } from './guide.ts';
export { pictureName, piecesOf, stepsOf } from './guide.ts';

/** The guides, for the app and for `docs/`. */
export const guides: readonly Guide[] = [coach, researcher, lifter];
