import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { answering } from '../panels/search.ts';
import { goTo } from '../state/actions.ts';
import { keysInWords } from '../state/keys.ts';
import type { Page } from '../state/page.ts';
import { commands } from './all.ts';
import { labelOf } from './command.ts';
import { rank } from './rank.ts';
import { whyNot } from './why-not.ts';

/** Something that the finder offers. */
export interface Find {
  readonly id: string;
  readonly label: string;
  /** Where it belongs, or what it is, in a few words. */
  readonly about: string;
  readonly keys?: string;
  /** Why it cannot be taken now. */
  readonly why?: string;
  readonly take: () => void;
}
export interface Finds {
  readonly title: string;
  readonly items: readonly Find[];
}
export interface Athlete {
  readonly name: string;
  readonly about: string;
  readonly sheet: string;
  readonly column: string;
  readonly row: number;
}

/** Of each group but the commands so many are listed. */
const LISTED = 8;
const key = (text: string): string => text.trim().replace(/…$/, '').toLowerCase();

/**
 * What fits some typed words, in groups: commands, sheets, columns, functions, athletes. A label that is exactly what was
 * typed comes first in its group, and its group before the others, as do commands that begin with it; then come groups whose
 * first label has the words. What cannot be taken now comes last, with the reason.
 */
export function finds(
  page: Page,
  typed: string,
  functions: readonly (readonly FunctionHelp[])[],
  athletes: readonly Athlete[],
): readonly Finds[] {
  const asked = key(typed);
  const first = (items: readonly Find[]): readonly Find[] =>
    items.toSorted(
      (a, b) =>
        Number(key(b.label) === asked) - Number(key(a.label) === asked) ||
        Number(a.why !== undefined) - Number(b.why !== undefined),
    );
  const groups: Finds[] = [{ title: 'Commands', items: first(commandsFor(page, typed)) }];
  if (asked !== '')
    groups.push(
      { title: 'Sheets', items: first(sheetsFor(page, typed)).slice(0, LISTED) },
      { title: 'Columns', items: first(columnsFor(page, typed)).slice(0, LISTED) },
      { title: 'Functions', items: first(functionsFor(page, typed, functions)).slice(0, LISTED) },
      { title: 'Athletes', items: first(athletesFor(page, typed, athletes)).slice(0, LISTED) },
    );
  const matching = ({ title, items }: Finds): number => {
    const label = key(items[0]!.label);
    // "Filter" is meant for "Filter by Athlete…" before the function FILTER.
    const begins = title === 'Commands' && `${label} `.startsWith(`${asked} `);
    return label === asked || begins ? 2 : label.includes(asked) ? 1 : 0;
  };
  return groups.filter(({ items }) => items.length > 0).toSorted((a, b) => matching(b) - matching(a));
}

function commandsFor(page: Page, typed: string): readonly Find[] {
  return rank(
    commands.filter(({ id }) => id !== 'find-command'),
    typed,
    (one) => `${labelOf(one, page)} ${one.group} ${one.searchWords ?? ''}`,
  ).map((one) => {
    const why = whyNot(one, page);
    return {
      id: one.id,
      label: labelOf(one, page),
      about: one.group,
      ...(one.keys?.[0] ? { keys: keysInWords(one.keys[0]) } : {}),
      ...(why === undefined ? {} : { why }),
      take: () => void one.run(page),
    };
  });
}

function sheetsFor(page: Page, typed: string): readonly Find[] {
  return rank(page.outline.value?.sheets ?? [], typed, ({ label, name }) => `${label} ${name}`).map(
    (sheet) => ({
      id: `sheet-${sheet.id}`,
      label: sheet.label,
      about: 'Sheet',
      take: () => {
        page.sheetId.value = sheet.id;
        page.chart.value = null;
      },
    }),
  );
}

function columnsFor(page: Page, typed: string): readonly Find[] {
  const now = page.sheet.value;
  const all = (page.outline.value?.sheets ?? []).flatMap((sheet) =>
    sheet.columns.filter(({ hidden }) => !hidden).map((column) => ({ sheet, column })),
  );
  // Those of the sheet on show come first.
  const near = all.toSorted((a, b) => Number(b.sheet.id === now?.id) - Number(a.sheet.id === now?.id));
  return rank(near, typed, ({ column }) => `${column.label} ${column.name}`).map(({ sheet, column }) => ({
    id: `column-${sheet.id}-${column.id}`,
    label: column.label,
    about: sheet.label,
    take: () => goTo(page, { sheet: sheet.id, column: column.id }),
  }));
}

/** Those of the domain before those of spreadsheets at large. */
function functionsFor(
  page: Page,
  typed: string,
  functions: readonly (readonly FunctionHelp[])[],
): readonly Find[] {
  if (typed.trim().length < 2) return [];
  return functions
    .flatMap((some) => answering(some, typed))
    .map(({ name, summary }) => ({
      id: `function-${name}`,
      label: name,
      about: summary,
      take: () => {
        page.guide.value = name;
        page.side.value = 'guide';
      },
    }));
}

function athletesFor(page: Page, typed: string, athletes: readonly Athlete[]): readonly Find[] {
  return rank(athletes, typed, ({ name }) => name).map(({ name, about, sheet, column, row }) => ({
    id: `athlete-${sheet}-${row}`,
    label: name,
    about,
    take: () => goTo(page, { sheet, column, row }),
  }));
}
