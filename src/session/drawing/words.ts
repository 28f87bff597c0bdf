import type { Figure, PostureFigure } from '../api.ts';

export type Stand = Figure['flat'];

export const isPosture = (stand: Stand | Figure['lifted']): stand is PostureFigure =>
  stand !== null && 'lean' in stand;

/** Whole degrees, with a true minus sign. */
export const degrees = (value: number): string => `${whole(value)}°`;

export const whole = (value: number): string => {
  const rounded = Math.round(value);
  return rounded < 0 ? `−${-rounded}` : `${rounded}`;
};

export const centimetres = (value: number): string => `${value.toFixed(1).replace('-', '−')} cm`;

/** A change with its sign. */
export const change = (from: number, to: number): string => {
  const difference = Math.round(to) - Math.round(from);
  return difference === 0 ? '0°' : `${difference > 0 ? '+' : '−'}${Math.abs(difference)}°`;
};

/** The figure in words, for those who hear it. */
export function inWords(figure: Figure): string {
  const parts: string[] = [];
  if (isPosture(figure.flat))
    parts.push(
      `Side view of ${figure.title}, to scale. On the flat: ${posture(figure.flat, figure.leanError)}`,
    );
  else parts.push(`${figure.title}. On the flat no posture can be drawn: ${figure.flat.sentence}`);
  if (figure.lifted && isPosture(figure.lifted))
    parts.push(
      `With ${centimetres(figure.lifted.lift)} under the heel: ${posture(figure.lifted, figure.leanError)}`,
    );
  else if (figure.lifted) parts.push(`With the lift: ${figure.lifted.sentence}`);
  return parts.join(' ');
}

function posture(of: PostureFigure, error: number | null): string {
  const margin = error === null ? '' : ` give or take ${Math.max(1, Math.round(error))}`;
  return `the trunk leans ${whole(of.lean)}${margin} degrees from the vertical, the shank ${whole(of.shank)}; knee bent ${whole(of.kneeFlexion)} degrees, hip ${whole(of.hipFlexion)}; the bar stands over mid-foot.`;
}
