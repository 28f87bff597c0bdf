/** Draws the parts of an observed lean as bars. */
import type { ExplainedLean, ExplainedPart } from '../figure-answers.ts';
import { degrees } from './drawing-words.ts';
import { el, type Shape } from './svg-shape.ts';

const width = 150;
const height = 14;

/** Degrees with their sign, whole; parts shown so add up to the lean shown. */
export const signedWhole = (value: number): string =>
  value === 0 ? '0°' : `${value < 0 ? '−' : '+'}${Math.abs(value)}°`;

/** A bar that adds up to the observed lean, part by part, each with its degrees or "within error", and the reasons below it. */
export function explainedShape(explained: ExplainedLean): Shape {
  const { lean, error, parts } = explained;
  const ends = [0];
  for (const { value } of parts) ends.push(ends.at(-1)! + value);
  const least = Math.min(...ends);
  const most = Math.max(...ends, least + 1);
  const x = (value: number): number => ((value - least) / (most - least)) * width;
  const row = (name: string, kind: string, from: number, to: number, text: string) =>
    el(
      'tr',
      { class: kind },
      el('th', { scope: 'row' }, name),
      el(
        'td',
        { class: 'parts-bar' },
        el(
          'svg',
          { viewBox: `0 0 ${width} ${height}`, 'aria-hidden': 'true' },
          el('rect', {
            x: x(Math.min(from, to)).toFixed(2),
            y: 2,
            width: Math.max(0.8, Math.abs(x(to) - x(from))).toFixed(2),
            height: height - 4,
          }),
        ),
      ),
      el('td', {}, text),
    );
  const kindOf = ({ part, value, within }: ExplainedPart): string =>
    part === 'reference' ? 'whole' : within ? 'within' : value < 0 ? 'less' : 'more';
  const textOf = ({ part, whole, within }: ExplainedPart): string =>
    part === 'reference' ? degrees(whole) : within ? 'within error' : signedWhole(whole);
  return el(
    'div',
    { class: 'explained' },
    el(
      'table',
      {},
      el('caption', { class: 'unseen' }, 'Parts of the observed lean, in degrees'),
      el(
        'tbody',
        {},
        parts.map((part, at) => row(part.label, kindOf(part), ends[at]!, ends[at + 1]!, textOf(part))),
        row('Observed lean', 'whole', 0, lean, `${degrees(lean)} ± ${Math.max(1, Math.round(error))}°`),
      ),
    ),
    el(
      'ul',
      {},
      reasonsOf(explained).map((reason) => el('li', {}, reason)),
    ),
  );
}

/** The parts as sentences; those within error together in one. */
export function reasonsOf({ parts }: ExplainedLean): readonly string[] {
  const within = parts.filter((part) => part.within);
  const names = within.map(({ label }) => label.toLowerCase());
  const together = within.reduce((sum, { whole }) => sum + whole, 0);
  return [
    ...parts
      .filter((part) => !part.within)
      .map(({ part, whole, words }) =>
        part === 'reference' ? `${degrees(whole)} ${words}.` : `${signedWhole(whole)} ${words}.`,
      ),
    ...(within.length > 0
      ? [
          `Within error: ${names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`}${together === 0 ? '' : ` (${signedWhole(together)}${within.length > 1 ? ' together' : ''})`}.`,
        ]
      : []),
  ];
}
