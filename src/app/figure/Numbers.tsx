import type { Figure, PostureFigure } from '../../session/api.ts';
import { centimetres, change, degrees, isPosture } from './words.ts';

interface Row {
  readonly name: string;
  readonly about: string;
  readonly of: (posture: PostureFigure) => number;
}

const rows: readonly Row[] = [
  { name: 'Trunk lean', about: 'from the vertical', of: ({ lean }) => lean },
  { name: 'Shank lean', about: 'from the vertical', of: ({ shank }) => shank },
  { name: 'Knee bend', about: 'flexion', of: ({ kneeFlexion }) => kneeFlexion },
  { name: 'Hip bend', about: 'flexion, trunk to thigh', of: ({ hipFlexion }) => hipFlexion },
];

/** The figure's angles, flat and lifted side by side. */
export function Numbers({ figure }: { figure: Figure }) {
  const flat = isPosture(figure.flat) ? figure.flat : null;
  const lifted = figure.lifted && isPosture(figure.lifted) ? figure.lifted : null;
  const first = flat ?? lifted;
  if (!first) return null;
  const error = figure.leanError === null ? '' : ` ± ${Math.max(1, Math.round(figure.leanError))}°`;
  return (
    <table class="figure-numbers">
      <thead>
        <tr>
          <td />
          {flat && <th scope="col">Flat</th>}
          {lifted && <th scope="col">{centimetres(lifted.lift)} lift</th>}
          {flat && lifted && <th scope="col">Change</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, about, of }, index) => (
          <tr key={name} class={index === 0 ? 'main-row' : undefined}>
            <th scope="row" title={about}>
              {name}
            </th>
            {flat && (
              <td>
                {degrees(of(flat))}
                {index === 0 && <span class="soft">{error}</span>}
              </td>
            )}
            {lifted && <td>{degrees(of(lifted))}</td>}
            {flat && lifted && <td>{change(of(flat), of(lifted))}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
