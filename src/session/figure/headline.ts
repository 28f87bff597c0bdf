import type { FigureNumbers, NoPosture, PostureFigure } from './figure-answers.ts';

/** What the headline is about: a lifter at one depth on the flat and on a heel lift, with the SD of the leans, deg. */
export interface Seen {
  readonly flat: PostureFigure | NoPosture;
  readonly lifted: PostureFigure | NoPosture | null;
  /** Height of the heel lift, cm, as it is shown. */
  readonly lift: string;
  readonly numbers: { readonly flat: FigureNumbers; readonly lifted: FigureNumbers | null };
}

/**
 * The one sentence above the figure: the minimum lean on the flat and, with a heel lift, what it does. A difference within
 * the measuring error is not told as one. Null where no posture exists on the flat: then the reason is shown.
 */
export function headlineOf({ flat, lifted, lift, numbers }: Seen): string | null {
  if (!('lean' in flat)) return null;
  const start = `At least ${lean(flat, numbers.flat)} of lean${atDepth(flat.depth)} on the flat`;
  if (!lifted || !('lean' in lifted)) return `${start}.`;
  const errors = [numbers.flat, numbers.lifted].map((each) => each && errorOf(each));
  const within = errors.some((error) => error && Math.abs(flat.lean - lifted.lean) <= error);
  return within
    ? `${start}; a ${lift} heel lift changes it by no more than the error.`
    : `${start}; a ${lift} heel lift brings it to ${lean(lifted, numbers.lifted)}.`;
}

function lean(stand: PostureFigure, numbers: FigureNumbers | null): string {
  const error = numbers && errorOf(numbers);
  // A line never breaks inside a value.
  return `${Math.round(stand.lean)}°${error ? `\u00a0±\u00a0${Math.max(1, Math.round(error))}°` : ''}`;
}

const errorOf = ({ leanError }: FigureNumbers): number | null =>
  typeof leanError.value === 'number' ? leanError.value : null;

function atDepth(depth: number): string {
  const whole = Math.round(depth);
  if (whole === 0) return ' at parallel';
  return ` at ${Math.abs(whole)}° ${whole > 0 ? 'above' : 'below'} parallel`;
}
