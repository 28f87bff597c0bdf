/** The numbers of the figure as a table. */
import type { Figure, FigureNumbers, PostureFigure, Told } from '../../session/api.ts';
import { centimetres, change, degrees, depthInWords, isPosture, whole } from './figure-words.ts';

interface Angle {
  readonly name: string;
  readonly about: string;
  readonly of: (posture: PostureFigure) => number;
}

const angles: readonly Angle[] = [
  { name: 'Trunk lean', about: 'from the vertical', of: ({ lean }) => lean },
  { name: 'Shin angle', about: 'from the vertical', of: ({ shank }) => shank },
  { name: 'Knee flexion', about: 'flexion', of: ({ kneeFlexion }) => kneeFlexion },
  { name: 'Hip flexion', about: 'flexion, trunk to thigh', of: ({ hipFlexion }) => hipFlexion },
];

interface Reading {
  readonly name: string;
  readonly about: string;
  readonly of: (numbers: FigureNumbers) => Told;
  readonly write: (value: number) => string;
}

const moments = 'both sides together, from the weight of body and bar at rest';
const readings: readonly Reading[] = [
  {
    name: 'Deepest',
    about: 'thigh above or below parallel, within the limits of ankle, knee, hip and 60° of lean',
    of: ({ deepest }) => deepest,
    write: (value) =>
      Math.round(value) === 0 ? 'parallel' : `${whole(Math.abs(value))}° ${value > 0 ? 'above' : 'below'}`,
  },
  {
    name: 'Depth limited by',
    about: 'the limit that stops the descent',
    of: ({ limiter }) => limiter,
    write: String,
  },
  {
    name: 'Knee past toes',
    about: 'knee ahead (+) or behind (−) of the toe tip',
    of: ({ kneeAhead }) => kneeAhead,
    write: centimetres,
  },
  {
    name: 'Hip moment',
    about: moments,
    of: ({ hipMoment }) => hipMoment,
    write: (value) => `${whole(value)} N·m`,
  },
  {
    name: 'Knee moment',
    about: moments,
    of: ({ kneeMoment }) => kneeMoment,
    write: (value) => `${whole(value)} N·m`,
  },
  {
    name: 'Hip share',
    about: 'hip / (hip + knee)',
    of: ({ hipShare }) => hipShare,
    write: (value) => `${Math.round(value * 100)} %`,
  },
];

const margin = ({ leanError: { value } }: FigureNumbers): string =>
  typeof value === 'number' ? ` ± ${Math.max(1, Math.round(value))}°` : '';

/** The figure's angles and what they ask of the lifter, set-ups side by side. */
export function Numbers({ figure, moment }: { figure: Figure; moment: PostureFigure | null }) {
  if (moment) return <MomentNumbers moment={moment} />;
  const { numbers } = figure;
  const flat = isPosture(figure.flat) ? figure.flat : null;
  const lifted = figure.lifted && isPosture(figure.lifted) ? figure.lifted : null;
  const beside = figure.beside && isPosture(figure.beside.stand) ? figure.beside.stand : null;
  if (!flat && !lifted) return null;
  const missing = numbers.flat.hipMoment.sentence ?? numbers.lifted?.hipMoment.sentence;
  return (
    <>
      <table class="figure-numbers">
        <thead>
          <tr>
            <td />
            {flat && <th scope="col">Flat</th>}
            {lifted && <th scope="col">{centimetres(lifted.lift)} heel lift</th>}
            {flat && lifted && !beside && <th scope="col">Change</th>}
            {beside && <th scope="col">{figure.beside!.title}</th>}
          </tr>
        </thead>
        <tbody>
          {angles.map(({ name, about, of }, index) => (
            <tr key={name} class={index === 0 ? 'main-row' : undefined}>
              <th scope="row" title={about}>
                {name}
              </th>
              {flat && (
                <td>
                  {degrees(of(flat))}
                  {index === 0 && <span class="soft">{margin(numbers.flat)}</span>}
                </td>
              )}
              {lifted && (
                <td>
                  {degrees(of(lifted))}
                  {index === 0 && numbers.lifted && <span class="soft">{margin(numbers.lifted)}</span>}
                </td>
              )}
              {flat && lifted && !beside && <td>{change(of(flat), of(lifted))}</td>}
              {beside && <td>{degrees(of(beside))}</td>}
            </tr>
          ))}
          {readings.map(({ name, about, of, write }) => {
            const cells = [flat && numbers.flat, lifted && numbers.lifted].filter((one) => one !== null);
            if (cells.every((one) => of(one).value === null)) return null;
            return (
              <tr key={name}>
                <th scope="row" title={about}>
                  {name}
                </th>
                {cells.map((one, i) => (
                  <td key={i === 0 ? 'first' : 'second'}>{shown(of(one), write)}</td>
                ))}
                {((flat && lifted) || beside) && <td />}
              </tr>
            );
          })}
        </tbody>
      </table>
      {figure.beside && (
        <p class="soft small">
          {figure.beside.by === 'same lifter'
            ? `${figure.title} as tested: ${figure.beside.title}, in this set-up.`
            : `${figure.beside.title} in this set-up, lengths × ${figure.beside.scale.toFixed(2)} to the same ${figure.beside.by}.`}
          {isPosture(figure.beside.stand) ? '' : ` No posture: ${figure.beside.stand.sentence}`}
        </p>
      )}
      {missing && <p class="soft small">{missing}</p>}
    </>
  );
}

const shown = ({ value, sentence }: Told, write: (value: number) => string) =>
  value === null ? (
    <span class="soft" title={sentence}>
      none
    </span>
  ) : typeof value === 'number' ? (
    write(value)
  ) : (
    value
  );

function MomentNumbers({ moment }: { moment: PostureFigure }) {
  return (
    <table class="figure-numbers">
      <thead>
        <tr>
          <td />
          <th scope="col">{depthInWords(moment).replace('degrees', '°').replace(' °', '°')}</th>
        </tr>
      </thead>
      <tbody>
        {angles.map(({ name, about, of }) => (
          <tr key={name}>
            <th scope="row" title={about}>
              {name}
            </th>
            <td>{degrees(of(moment))}</td>
          </tr>
        ))}
        {moment.hipMoment !== undefined && moment.kneeMoment !== undefined && (
          <>
            <tr>
              <th scope="row">Hip moment</th>
              <td>{whole(moment.hipMoment)} N·m</td>
            </tr>
            <tr>
              <th scope="row">Knee moment</th>
              <td>{whole(moment.kneeMoment)} N·m</td>
            </tr>
          </>
        )}
      </tbody>
    </table>
  );
}
