/** Makes a face in a picture unrecognisable. */
import type { Spot } from '../../session/picture/points.ts';

/** Draws a rectangle again from so few pixels that nobody is known in it. Corners are in the picture’s own px; `shrink` is the canvas’s scale. */
export function coarsen(
  paint: CanvasRenderingContext2D,
  [a, b]: readonly [Spot, Spot],
  shrink: number,
): void {
  const [x, y] = [Math.min(a.x, b.x) * shrink, Math.min(a.y, b.y) * shrink];
  const [width, height] = [Math.abs(a.x - b.x) * shrink, Math.abs(a.y - b.y) * shrink];
  if (width < 1 || height < 1) return;
  const few = document.createElement('canvas');
  few.width = 6;
  few.height = Math.max(1, Math.round((6 * height) / width));
  few.getContext('2d')!.drawImage(paint.canvas, x, y, width, height, 0, 0, few.width, few.height);
  paint.imageSmoothingEnabled = false;
  paint.drawImage(few, x, y, width, height);
  paint.imageSmoothingEnabled = true;
}
