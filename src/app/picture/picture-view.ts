import type { Spot } from '../../session/picture/points.ts';

/** How the picture lies on the stage: a point p of it shows at p · zoom + (x, y). */
export interface Lie {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The whole picture in the middle of the stage. */
export function fitted(stage: Size, picture: Size): Lie {
  const zoom = Math.min(stage.width / picture.width, stage.height / picture.height) || 1;
  return {
    zoom,
    x: (stage.width - picture.width * zoom) / 2,
    y: (stage.height - picture.height * zoom) / 2,
  };
}

/** Nearer or farther, with the place under the pointer staying where it is. */
export function zoomed(lie: Lie, by: number, at: Spot, least: number): Lie {
  const zoom = Math.min(Math.max(lie.zoom * by, least), least * 40);
  const ratio = zoom / lie.zoom;
  return { zoom, x: at.x - (at.x - lie.x) * ratio, y: at.y - (at.y - lie.y) * ratio };
}

export const onStage = ({ zoom, x, y }: Lie, p: Spot): Spot => ({ x: p.x * zoom + x, y: p.y * zoom + y });
export const onPicture = ({ zoom, x, y }: Lie, p: Spot): Spot => ({
  x: (p.x - x) / zoom,
  y: (p.y - y) / zoom,
});

export const within = ({ x, y }: Spot, { width, height }: Size): Spot => ({
  x: Math.min(Math.max(x, 0), width),
  y: Math.min(Math.max(y, 0), height),
});
