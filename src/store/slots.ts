import { type Access, type Files, sourceOf } from './files.ts';
import { isNewer, later, type Segment, segmentIn } from './segment.ts';

/** Files that a book's segments take turns in; two, unless a tab that it was taken from still holds one. */
export const SLOTS = ['0', '1', '2', '3'] as const;
const slotName = /^(.+)\.[0-3]$/;

export const slotOf = (id: string, slot: string): string => `${id}.${slot}`;

/** The books that have a second journal. */
export async function booksIn(files: Files): Promise<ReadonlySet<string>> {
  return new Set((await files.names()).flatMap((name) => slotName.exec(name)?.[1] ?? []));
}

/** Deletes the second journal of a book that nobody has open. @throws DOMException when somebody has */
export async function removeSecond(files: Files, id: string): Promise<void> {
  for (const slot of SLOTS) await files.remove(slotOf(id, slot));
}

/**
 * The last segment of a book, open; what an earlier one left behind is emptied. Where none is whole, or one is a newer
 * program's, everything stays as it is.
 */
export async function latest(files: Files, id: string) {
  const opened: { readonly slot: string; readonly access: Access; readonly segment: Segment | undefined }[] =
    [];
  for (const slot of SLOTS) {
    const access = await files.access(slotOf(id, slot), { patient: true });
    if (access) opened.push({ slot, access, segment: segmentIn(sourceOf(access)) });
  }
  const segments = opened.flatMap(({ segment, ...of }) => (segment ? [{ ...of, segment }] : []));
  const newer = segments.some(({ segment }) => isNewer(segment));
  const best = newer
    ? undefined
    : segments.reduce<(typeof segments)[0] | undefined>(
        (best, one) => (best && later(best.segment, one.segment) ? best : one),
        undefined,
      );
  for (const { access } of opened)
    if (!best) access.close();
    else if (access !== best.access) empty(access);
  return newer ? 'newer' : best;
}

/** Empties a file that is open, and closes it. */
export function empty(access: Access | undefined): void {
  try {
    if (access && access.getSize() > 0) access.truncate(0);
  } catch {
    // It stays as it is: the later segment goes before it.
  }
  access?.close();
}
