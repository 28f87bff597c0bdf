import type { Spot } from '../../session/picture/points.ts';
import { download, fileNameFor } from '../files/files.ts';
import { coarsen } from './coarsen.ts';
import type { Medium } from './medium.ts';

/** Longest side of a saved picture, px. */
const longest = 2000;

/** A line or, with one end, a point to be drawn over the picture. */
export interface Mark {
  readonly from: Spot;
  readonly to?: Spot;
  readonly colour: string;
  readonly dashed?: boolean;
}

/**
 * The frame on show with lines and points over it, as PNG. The rectangle, where there is one, is drawn so coarse that no
 * face is left in it. @throws Error with a sentence when the browser cannot make the file
 */
export async function savePicture(
  medium: Medium,
  marks: readonly Mark[],
  blur: readonly [Spot, Spot] | null,
  title: string,
): Promise<void> {
  const shrink = Math.min(1, longest / Math.max(medium.width, medium.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(medium.width * shrink);
  canvas.height = Math.round(medium.height * shrink);
  const paint = canvas.getContext('2d')!;
  paint.drawImage(medium.element, 0, 0, canvas.width, canvas.height);
  if (blur) coarsen(paint, blur, shrink);
  const width = Math.max(2, canvas.width / 300);
  paint.lineCap = 'round';
  for (const { from, to, colour, dashed } of marks) {
    paint.beginPath();
    paint.moveTo(from.x * shrink, from.y * shrink);
    if (to) paint.lineTo(to.x * shrink, to.y * shrink);
    else paint.arc(from.x * shrink, from.y * shrink, width * 2, 0, 2 * Math.PI);
    paint.setLineDash([]);
    paint.strokeStyle = '#000';
    paint.lineWidth = width * 2;
    paint.stroke();
    paint.setLineDash(dashed ? [width * 4, width * 3] : []);
    paint.strokeStyle = colour;
    paint.lineWidth = width;
    paint.stroke();
  }
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('The browser could not make a picture file. Try a smaller picture.');
  download(blob, fileNameFor(title, '.png'), 'image/png');
}
