/** The model's posture laid over a picture: centimetres of the side view become places on the picture. */
import { cos, sin } from '../../../functions/posture/angle.ts';
import type { PostureFigure } from '../figure/figure-answers.ts';
import type { Spot, Spots } from './points.ts';

type Joint = 'heel' | 'ball' | 'toe' | 'ankle' | 'knee' | 'hip' | 'shoulder' | 'bar';

/**
 * Where the joints of a posture lie on the picture: to scale, turned as the picture is, mid-foot on the middle between the
 * heel and toe placed. Null until foot and scale are known.
 */
export function postureOver(
  posture: Pick<PostureFigure, Joint>,
  points: Spots,
  scale: number | null,
  level: number,
  facing: 'right' | 'left',
): Readonly<Record<Joint, Spot>> | null {
  const { heel, toe } = points;
  if (!heel || !toe || scale === null) return null;
  const middle = { x: (heel.x + toe.x) / 2, y: (heel.y + toe.y) / 2 };
  const from = [(posture.heel[0] + posture.toe[0]) / 2, (posture.heel[1] + posture.toe[1]) / 2] as const;
  const place = ([x, y]: readonly [number, number]): Spot => {
    const across = ((x - from[0]) / scale) * (facing === 'left' ? -1 : 1);
    const down = -(y - from[1]) / scale;
    return {
      x: middle.x + across * cos(level) - down * sin(level),
      y: middle.y + across * sin(level) + down * cos(level),
    };
  };
  const { ball, ankle, knee, hip, shoulder, bar } = posture;
  return {
    heel: place(posture.heel),
    ball: place(ball),
    toe: place(posture.toe),
    ankle: place(ankle),
    knee: place(knee),
    hip: place(hip),
    shoulder: place(shoulder),
    bar: place(bar),
  };
}
