/** The small copy of a picture that a book has where the user asked for one: the book's own part `pictures`. */
import type { Book } from '../../book/model.ts';
import { definePart, pointsAtNothing } from '../../book/references/part.ts';
import { z } from '../../book/zod.ts';
import { COPY_MOST, copyKey } from './copy-key.ts';

const side = z.int().min(1).max(16_384);

/** Points lie in the picture's own coordinates, so the copy says how large the picture itself is. */
export const pictureCopy = z.strictObject({
  /** Width and height of the picture itself, px. */
  width: side,
  height: side,
  /** A JPEG file, base64. */
  jpeg: z
    .string()
    .min(1)
    .max(Math.ceil(COPY_MOST / 3) * 4)
    .regex(/^[A-Za-z0-9+/]+={0,2}$/),
});
export type PictureCopy = z.infer<typeof pictureCopy>;

/** A copy belongs to a fingerprint, whichever rows have it: nothing in it names a place in the book. */
export const picturePart = definePart({
  word: 'copy of a picture',
  part: 'pictures',
  schema: pictureCopy,
  references: pointsAtNothing,
});

/** The book's copy of a picture or frame; null without one, and for one that cannot be read. */
export function copyOf(book: Book, hash: string, time: number | null): PictureCopy | null {
  const read = pictureCopy.safeParse(book.parts.pictures.get(copyKey(hash, time)));
  return read.success ? read.data : null;
}

/** How many copies the book has, and the bytes of the pictures in them. */
export function copiesIn(book: Book): { readonly count: number; readonly bytes: number } {
  let bytes = 0;
  for (const kept of book.parts.pictures.values()) {
    const jpeg = (kept as { readonly jpeg?: unknown } | null)?.jpeg;
    if (typeof jpeg === 'string') bytes += bytesOf(jpeg);
  }
  return { count: book.parts.pictures.size, bytes };
}

/** Bytes that a base64 text stands for (RFC 4648, section 4: four characters for three bytes). */
export const bytesOf = (base64: string): number => Math.floor((base64.replace(/=+$/, '').length * 3) / 4);
