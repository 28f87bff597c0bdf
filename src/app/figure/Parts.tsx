/** Where the minimum lean comes from, part by part, as bars. */
import type { FigureParts } from '../../session/api.ts';
import './parts.css';
import { degrees } from './figure-words.ts';

const width = 150;
const height = 14;

/** Where the minimum lean at parallel on the flat comes from: from the reference's lean, part by part, to this lifter's. */
export function Parts({ parts }: { parts: FigureParts }) {
  const { lean, reference, items, referenceAnkle } = parts;
  const ends = [reference];
  for (const { value } of items) ends.push(ends.at(-1)! + value);
  const least = Math.min(0, ...ends);
  const most = Math.max(...ends, least + 1);
  const x = (value: number): number => ((value - least) / (most - least)) * width;
  const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(1)}°`;
  const whole = (value: number) => ({ from: x(Math.min(0, value)), to: x(Math.max(0, value)) });
  const rows = [
    { name: 'Reference lifter', kind: 'whole', ...whole(reference), text: degrees(reference) },
    ...items.map(({ name, value }, i) => ({
      name: name[0]!.toUpperCase() + name.slice(1),
      kind: value < 0 ? 'less' : 'more',
      from: x(Math.min(ends[i]!, ends[i + 1]!)),
      to: x(Math.max(ends[i]!, ends[i + 1]!)),
      text: signed(value),
    })),
    { name: 'This lifter', kind: 'whole', ...whole(lean), text: degrees(lean) },
  ];
  return (
    <section class="parts">
      <h4>Where the minimum lean at parallel comes from, heels flat</h4>
      <table>
        <caption class="unseen">Parts of the lean, in degrees</caption>
        <tbody>
          {rows.map(({ name, kind, from, to, text }) => (
            <tr key={name} class={kind}>
              <th scope="row">{name}</th>
              <td class="parts-bar">
                <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
                  <rect x={from} y="2" width={Math.max(0.8, to - from)} height={height - 4} />
                </svg>
              </td>
              <td>{text}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">
        The reference has the same femur + tibia + trunk, in average proportions, and an ankle range of{' '}
        {Math.round(referenceAnkle)}°.
      </p>
    </section>
  );
}
