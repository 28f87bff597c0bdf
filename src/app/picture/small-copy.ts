/** A small copy of the picture on show, for the book. */
import type { PictureCopy } from '../../session/picture/copy.ts';
import { COPY_MOST } from '../../session/picture/copy-key.ts';
import type { Spot } from '../../session/picture/points.ts';
import { coarsen } from './coarsen.ts';
import type { Medium } from './medium.ts';

/** Longest sides that are tried, px, from the largest. */
const LONGEST = [1600, 1280, 1024, 800, 640, 480, 320, 160] as const;
const QUALITY = 0.8;

/**
 * The largest JPEG of the frame on show that has at most 200 kB, the rectangle in it made unrecognisable. Nothing of the
 * file but its pixels is in it: no place, camera or date. @throws Error with a sentence when the browser cannot make one
 */
export async function smallCopy(medium: Medium, blur: readonly [Spot, Spot] | null): Promise<PictureCopy> {
  const { width, height, element } = medium;
  const canvas = document.createElement('canvas');
  for (const longest of LONGEST) {
    const shrink = Math.min(1, longest / Math.max(width, height));
    canvas.width = Math.max(1, Math.round(width * shrink));
    canvas.height = Math.max(1, Math.round(height * shrink));
    const paint = canvas.getContext('2d')!;
    // JPEG knows no see-through places: they are white, as on paper
    paint.fillStyle = '#fff';
    paint.fillRect(0, 0, canvas.width, canvas.height);
    paint.drawImage(element, 0, 0, canvas.width, canvas.height);
    if (blur) coarsen(paint, blur, shrink);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
    if (blob && blob.size <= COPY_MOST) return { width, height, jpeg: await base64(blob) };
  }
  throw new Error('The browser could not make a copy of this picture. Save a smaller picture and open that.');
}

async function base64(blob: Blob): Promise<string> {
  let text = '';
  for (const byte of new Uint8Array(await blob.arrayBuffer())) text += String.fromCharCode(byte);
  return btoa(text);
}
