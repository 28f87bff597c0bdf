/** The angles read from a picture, with their errors. */
import type { Reading } from '../../session/picture/readings.ts';
import type { Digitising } from './digitising.ts';

const number = (value: number, unit: 'deg' | 'cm', digits = unit === 'deg' ? 0 : 1): string => {
  const text = Math.abs(value).toFixed(digits);
  const sign = value < 0 && Number(text) !== 0 ? '−' : '';
  return `${sign}${text}${unit === 'deg' ? '°' : ' cm'}`;
};

const spread = ({ error, unit }: Reading): string =>
  error === null ? '' : ` ± ${number(Math.max(error, unit === 'deg' ? 1 : 0.1), unit)}`;

interface Props {
  readonly at: Digitising;
  /** Lean of the model at the observed depth, deg: with the whole ankle range, and at the observed shin angle. */
  readonly minimum: number | null;
  readonly atShin: number | null;
}

/** What the points say, each with its error, and the model beside it. */
export function Readings({ at, minimum, atShin }: Props) {
  const { list, levelWhy, scaleWhy, scale } = at.readings.value;
  const lean = list.find(({ id }) => id === 'lean')!;
  return (
    <section class="readings">
      <table>
        <caption class="unseen">Read off the picture</caption>
        <tbody>
          {list.map((reading) => (
            <tr key={reading.id}>
              <th scope="row">{reading.label}</th>
              {reading.value === null ? (
                <td class="soft">{reading.why}</td>
              ) : (
                <td>
                  {number(reading.value, reading.unit)}
                  <span class="soft">{spread(reading)}</span>
                </td>
              )}
            </tr>
          ))}
          {minimum !== null && (
            <tr>
              <th scope="row">Minimum lean (model)</th>
              <td>{number(minimum, 'deg')}</td>
            </tr>
          )}
          {atShin !== null && (
            <tr>
              <th scope="row">Model at the observed shin angle</th>
              <td>{number(atShin, 'deg')}</td>
            </tr>
          )}
        </tbody>
      </table>
      {minimum !== null && lean.value !== null && (
        <p>{difference(lean.value, minimum, Math.max(lean.error ?? 0, 1))}</p>
      )}
      {scale === null && !scaleWhy && <p class="soft">Mark a known length to see errors and the model.</p>}
      {scaleWhy && <p class="panel-note failure">{scaleWhy}</p>}
      {levelWhy && <p class="panel-note failure">{levelWhy}</p>}
    </section>
  );
}

/** The observed lean beside the model's minimum, in a sentence; within the error no difference is claimed. */
function difference(lean: number, minimum: number, error: number): string {
  const more = lean - minimum;
  if (Math.abs(more) <= 2 * error)
    return 'Observed lean and minimum lean differ by no more than their error.';
  return more > 0
    ? `${number(more, 'deg')} more lean than this build and ankle range require: the part that coaching can reach.`
    : `${number(-more, 'deg')} less lean than the model’s minimum: check the points, the lengths and the ankle test, or the bar is not over mid-foot.`;
}
