import { atan2 } from '../core/elementary/arc.ts';
import { issue } from '../core/issue.ts';
import { number, numberOr, optionOr } from '../core/parameter.ts';
import { practice } from '../core/source.ts';
import { cos, RAD, sin } from './angle.ts';

// Points clicked on a picture: x to the right, y down, in any unit as long as both axes share it.

/** A coordinate of a point on the picture. */
export const coordinate = (name: string, about: string) => number(name, '', about);

export const facing = () => optionOr('right', 'facing', ['right', 'left'], 'where the lifter looks');

export const level = () =>
  numberOr(0, 'level', 'deg', 'how far the picture is turned clockwise, from PHOTO.LEVEL', {
    bounds: { min: -45, max: 45, because: 'A picture turned further is better turned upright first.' },
  });

export const scale = () =>
  number('scale', 'cm', 'centimetres for one unit of the picture, from PHOTO.SCALE', {
    bounds: { above: 0, because: 'A unit of the picture shows some length.' },
  });

/** How a picture must be taken for the angles on it to hold. */
export const sideOn =
  'Take the picture square from the side, at hip height. A camera turned about the vertical scales the tangent of the lean by the cosine of that turn: 10° cost .4° at a lean of 40°. A rolled camera adds its angle one for one.';
export const squareOn = practice('a side picture taken square to the plane in which the lifter moves');

/** From one point to another with the picture turned back: ahead where the lifter looks, and up. */
export function between(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  looks: 'right' | 'left',
  turned: number,
): { readonly ahead: number; readonly up: number } {
  const [dx, dy] = [toX - fromX, toY - fromY];
  const across = dx * cos(turned) + dy * sin(turned);
  const down = dy * cos(turned) - dx * sin(turned);
  return { ahead: looks === 'left' ? -across : across, up: -down };
}

/** Angle of a direction, deg, above −180 to 180. */
export function angleOf(part: number, along: number): number {
  const angle = atan2(part, along) / RAD;
  return angle === -180 ? 180 : angle;
}

/** Two points that should differ are one: an angle or a scale needs a line. */
export const samePoint = (parameter: string, other: string, x: number, y: number) =>
  issue('#DIV/0!', 'points-coincide', { parameter, received: x, details: { other, x, y } });
