/** Whose chart is shown: everybody's, or one person's. */
import type { ChartPerson } from '../../session/charts/person.ts';
import type { Page } from '../state/page.ts';

type Who = Page['chartPerson'];

/** What the session is asked for; following the selection, the page asks again when another row is selected. */
export function personFor({ selection }: Page, who: Who['value']): ChartPerson | undefined {
  if (who === 'everyone') return undefined;
  if (who !== 'selected') return who;
  const now = selection.value;
  return now ? { sheet: now.sheet, row: now.row } : undefined;
}

interface Props {
  readonly people: readonly string[];
  readonly person: string | null;
  readonly who: Who;
}

/** Whose chart it is. Hidden where the sheet names nobody. */
export function PersonPicker({ people, person, who }: Props) {
  if (people.length < 2 && who.value === 'everyone') return null;
  const now = who.value;
  const value = typeof now === 'string' ? now : `name ${now.name}`;
  return (
    <label class="chart-person">
      Person{' '}
      <select
        value={value}
        onChange={(event) => {
          const to = event.currentTarget.value;
          who.value = to === 'everyone' || to === 'selected' ? to : { name: to.slice('name '.length) };
        }}
      >
        <option value="everyone">Everyone</option>
        <option value="selected">
          {now === 'selected' && person !== null ? `Selected row: ${person}` : 'Selected row’s athlete'}
        </option>
        {typeof now !== 'string' && !people.includes(now.name) && <option value={value}>{now.name}</option>}
        {people.map((name) => (
          <option key={name} value={`name ${name}`}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
