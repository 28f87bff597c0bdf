/** Whether a column can have a role. */
import { dimensions } from '../../units/dimension.ts';
import type { Column, Sheet } from '../model.ts';
import { refuse } from '../refusal.ts';
import { fitsRole, NO_ROLE, type Role, roles } from './list.ts';

const words: Readonly<Record<'number' | 'text' | 'date' | 'who', string>> = {
  number: 'a number',
  text: 'a text',
  date: 'a date',
  who: 'a text, a choice or a plain number',
};

const inWords = (is: Role['is']): string =>
  is in words ? words[is as keyof typeof words] : `a number in ${dimensions[is as keyof typeof dimensions]}`;

/** Refuses a role that a column cannot have: one that is not known, not of its kind, or taken in its sheet. @throws Refusal */
export function checkRole(sheet: Pick<Sheet, 'columns' | 'label'>, column: Column): void {
  const { role, label } = column;
  if (role === undefined || role === NO_ROLE) return;
  const known =
    roles.get(role) ?? refuse(`"${role}" is not something that a column can be. Select it from the list.`);
  const other = sheet.columns.find((one) => one.id !== column.id && one.role === role);
  if (other)
    refuse(
      `${other.label} is already ${known.label} in ${sheet.label}. Set what ${other.label} is to something else first.`,
    );
  if (!fitsRole(column, role))
    refuse(`${known.label} is ${inWords(known.is)}. Change the kind or unit of ${label}, or select another.`);
}
