import type { Handout } from './handout.ts';

/** So many athletes are named; of more the number is told. */
const named = 3;

/** Why sentences could not be decided, grouped by the reason: for whom, and which sentences. For the coach, before printing. */
export function openNotes(handouts: readonly Pick<Handout, 'athlete' | 'row' | 'open'>[]): readonly string[] {
  const groups = new Map<string, { rules: Set<number>; rows: Map<number, string> }>();
  for (const { athlete, row, open } of handouts)
    for (const { rule, reason } of open) {
      const group = groups.get(reason) ?? { rules: new Set(), rows: new Map() };
      group.rules.add(rule);
      group.rows.set(row, athlete);
      groups.set(reason, group);
    }
  return [...groups].map(([reason, { rules, rows }]) => {
    const all = rows.size === handouts.length && rows.size > 1;
    const who = all ? `all ${rows.size} athletes` : several([...rows.values()]);
    const which = listed([...rules].sort((a, b) => a - b).map(String));
    return `${rules.size === 1 ? 'Sentence' : 'Sentences'} ${which} not assessed for ${who}: ${reason}`;
  });
}

const several = (names: readonly string[]): string =>
  names.length <= named
    ? listed(names)
    : `${names.slice(0, named).join(', ')} and ${names.length - named} more`;

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
