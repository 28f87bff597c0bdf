/** The drawing of a figure in words. */
import type { Figure, FigureNumbers, NoPosture, PostureFigure } from '../figure-answers.ts';

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

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a row lacks for the figure, and where it belongs: in the row, in columns that the sheet has not, or in another sheet. */
export function missingInWords(
  { missing, absent, elsewhere }: Pick<Figure, 'missing' | 'absent' | 'elsewhere'>,
  sheet: string,
): string {
  const without = missing.filter((measure) => absent.includes(measure));
  const blank = missing.filter((measure) => !absent.includes(measure));
  if (without.length === 0) return `${capital(listed(blank))} ${blank.length > 1 ? 'are' : 'is'} empty.`;
  const columns = `${sheet} has no ${without.length > 1 ? 'columns' : 'column'} ${listed(without)}`;
  if (blank.length > 0)
    return `${columns}, and ${listed(blank)} ${blank.length > 1 ? 'are' : 'is'} empty. Fill in the row and add the ${without.length > 1 ? 'columns' : 'column'}, ${elsewhere === null ? 'or import a file that has them' : `or select a row of ${elsewhere}`}.`;
  return elsewhere === null
    ? `${columns}. Add ${without.length > 1 ? 'them' : 'it'}, or import a file with femur, tibia, trunk and ankle.`
    : `${columns}. Select a row of ${elsewhere}, which has all that the figure needs.`;
}

/** The figure in words, for those who hear it. */
export function inWords(figure: Figure, moment?: PostureFigure): string {
  if (moment)
    return `Side view of ${figure.title}, going down: ${depthInWords(moment)}; ${posture(moment, null)}`;
  const parts: string[] = [];
  const { flat, lifted, beside, numbers } = figure;
  if (isPosture(flat))
    parts.push(
      `Side view of ${figure.title}, to scale. On the flat: ${posture(flat, errorOf(numbers.flat))}`,
    );
  else parts.push(`${figure.title}. On the flat ${failure(flat)}`);
  if (lifted && isPosture(lifted))
    parts.push(
      `With ${centimetres(lifted.lift)} under the heel: ${posture(lifted, errorOf(numbers.lifted))}`,
    );
  else if (lifted) parts.push(`With the heel lift ${failure(lifted)}`);
  if (beside && isPosture(beside.stand))
    parts.push(
      `Behind it ${beside.title}, ${beside.by === 'same lifter' ? 'the same lifter' : `lengths times ${beside.scale.toFixed(2)}`}: ${posture(beside.stand, null)}`,
    );
  return parts.join(' ');
}

export const depthInWords = ({ depth }: PostureFigure): string => {
  const off = Math.round(Math.abs(depth));
  return off === 0 ? 'thigh parallel' : `thigh ${off} degrees ${depth > 0 ? 'above' : 'below'} parallel`;
};

const errorOf = (numbers: FigureNumbers | null): number | null =>
  typeof numbers?.leanError.value === 'number' ? numbers.leanError.value : null;

function failure({ sentence, nearest }: NoPosture): string {
  const short = nearest
    ? ` As far forward as the trunk goes, the load stays ${centimetres(-nearest.offset)} behind mid-foot.`
    : '';
  return `no posture is balanced: ${sentence}${short}`;
}

function posture(of: PostureFigure, error: number | null): string {
  const margin = error === null ? '' : ` ± ${Math.max(1, Math.round(error))}`;
  const loads =
    of.hipMoment === undefined || of.kneeMoment === undefined
      ? ''
      : ` Hip moment ${whole(of.hipMoment)} newton metres, knee moment ${whole(of.kneeMoment)}.`;
  return `lean ${whole(of.lean)}${margin} degrees, shin angle ${whole(of.shank)}, knee flexion ${whole(of.kneeFlexion)}, hip flexion ${whole(of.hipFlexion)}; the ${of.balanced} is over mid-foot.${loads}`;
}
