/** The moments at hip, knee and ankle beside the figure. */
import type { Figure, PostureLoads, Told } from '../../session/api.ts';
import './heel-or-ankle.css';
import { degrees, whole } from './figure-words.ts';

const names = {
  minimum: 'Minimum lean, bar over mid-foot',
  system: 'Minimum lean, whole weight over mid-foot',
  observed: 'As observed',
} as const;

const newtonMetres = (value: number): string => `${whole(value)} N·m`;
const rows: readonly {
  readonly name: string;
  readonly about: string;
  readonly of: (loads: PostureLoads) => Told;
  readonly write: (value: number) => string;
}[] = [
  { name: 'Trunk lean', about: 'from the vertical', of: ({ lean }) => ({ value: lean }), write: degrees },
  { name: 'Shin angle', about: 'from the vertical', of: ({ shin }) => ({ value: shin }), write: degrees },
  { name: 'Hip moment', about: 'both sides together', of: ({ hip }) => hip, write: newtonMetres },
  { name: 'Knee moment', about: 'both sides together', of: ({ knee }) => knee, write: newtonMetres },
  {
    name: 'Ankle moment',
    about: 'both sides together; plus asks the calf to hold',
    of: ({ ankle }) => ankle,
    write: newtonMetres,
  },
  {
    name: 'Hip share',
    about: 'hip / (hip + knee)',
    of: ({ share }) => share,
    write: (value) => `${Math.round(value * 100)} %`,
  },
  {
    name: 'Centre of pressure',
    about: '% of the foot from the heel; outside 0 to 100 the lifter tips',
    of: ({ centre }) => centre,
    write: (value) => `${whole(value)} %`,
  },
];

/** Hips, knees and ankles side by side: by both rules of the model, and as observed. */
export function Loads({ figure: { loads } }: { figure: Figure }) {
  const observed = loads.some(({ of }) => of === 'observed');
  return (
    <section class="heel-or-ankle loads">
      <h4>Loads, standing still</h4>
      <div class="scrolled">
        <table class="figure-numbers">
          <thead>
            <tr>
              <td />
              {loads.map(({ of }) => (
                <th key={of} scope="col">
                  {names[of]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, about, of, write }) => (
              <tr key={name}>
                <th scope="row" title={about}>
                  {name}
                </th>
                {loads.map(({ of: which, loads: one }) => {
                  const { value, sentence } = of(one);
                  return (
                    <td key={which}>
                      {typeof value === 'number' ? (
                        write(value)
                      ) : (
                        <span class="soft" title={sentence}>
                          –
                        </span>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="soft small">
        {observed
          ? 'Read loads as observed. At the minimum lean the knees are fully forward and the hips’ share comes out too low.'
          : 'Loads are meant for an observed lean and shin angle. At the minimum lean the hips’ share comes out too low.'}
      </p>
    </section>
  );
}
