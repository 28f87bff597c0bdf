/** What the new columns of a file are, said in the book, so that it stays known whatever they are called later. */

import type { Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { fitsRole, roles } from '../../book/roles/list.ts';
import { headingKey, synonymIndex, synonyms } from '../detect/index.ts';

const lines = synonymIndex(synonyms);
const lineOf = (text: string): number | undefined => lines.get(headingKey(text));

const ofLine: ReadonlyMap<number, readonly string[]> = (() => {
  const found = new Map<number, string[]>();
  for (const [role, { names = [], label, group }] of roles) {
    if (group === 'Picture' || group === 'Measured again') continue;
    for (const line of new Set([role, label, ...names].map(lineOf)))
      if (line !== undefined) found.set(line, [...(found.get(line) ?? []), role]);
  }
  return found;
})();

/** These are measures of a person: beside nobody's name a "height" is some other height. */
const ofPersons = new Set(['Person', 'Build', 'Ankle']);

/** New columns with what they are, as far as their headings say it; a role that the sheet has already is left alone. */
export function declareRoles(made: readonly Column[], sheet: Sheet): readonly Column[] {
  const all = [...sheet.columns, ...made];
  const has = (word: string): boolean =>
    all.some(({ name, label }) => [name, label].some((text) => lineOf(text) === lineOf(word)));
  const named = has('athlete') || columnInRole(sheet, 'athlete') !== undefined;
  const isLog = has('reps') || has('exercise') || has('session load');
  const taken = new Set([...roles.keys()].filter((role) => columnInRole(sheet, role)));
  return made.map((column) => {
    if (column.formula !== undefined) return column;
    const role = candidates(column, isLog).find(
      (one) =>
        fitsRole(column, one) &&
        !taken.has(one) &&
        (one === 'athlete' || named || !ofPersons.has(roles.get(one)!.group)),
    );
    if (role === undefined) return column;
    taken.add(role);
    return { ...column, role };
  });
}

/** The roles that a heading may mean, the likeliest first. Of words with two meanings the file decides. */
function candidates({ name, label, dimension }: Column, isLog: boolean): readonly string[] {
  const key = headingKey(label);
  const exact = roles.has(nameKey(name)) && nameKey(name) !== 'lean' ? [nameKey(name)] : [];
  const found = [lineOf(label), lineOf(name)].flatMap((line) =>
    line === undefined ? [] : (ofLine.get(line) ?? []),
  );
  const first = (role: string, ...others: readonly string[]): readonly string[] => [
    role,
    ...found.filter((one) => one !== role && !others.includes(one)),
  ];
  if (found.includes('tested') || found.includes('day'))
    return isLog && !/test|measur|screen|assess/.test(key) ? ['day'] : ['tested'];
  if (found.includes('session_rpe')) return /session|srpe/.test(key) || !isLog ? ['session_rpe'] : ['rpe'];
  if (found.includes('load')) return isLog || !key.startsWith('bar') ? first('load', 'bar') : ['bar'];
  if (found.includes('lean')) return key === 'lean' ? [] : ['observed_lean'];
  if (found.includes('minutes') && key === 'time' && dimension !== 'duration') return [];
  return [...exact, ...found];
}
