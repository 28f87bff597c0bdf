/** Puts the book's small copy of a row's picture on show, with the row's points. */
import type { StoredPicture } from '../../session/picture/stored.ts';
import type { Digitising } from './digitising.ts';
import { openCopy } from './medium.ts';

/** `wanted` is asked when the copy is open: whether its row is still the selected one. @throws Error with a sentence */
export async function showCopy(
  at: Digitising,
  { copy, seen }: StoredPicture,
  wanted: () => boolean = () => true,
): Promise<void> {
  if (!copy || !seen) return;
  const medium = await openCopy(copy, seen);
  if (!wanted()) return medium.close();
  at.show(medium);
  at.load(seen);
}
