/** What a command of the page is: its group, label, keys and words to search by. */
import type { Page } from '../state/page.ts';
import type { IconName } from '../theme/icons.tsx';

export const groups = ['Book', 'Edit', 'Sheet', 'Column', 'Row', 'View', 'Help'] as const;
export type Group = (typeof groups)[number];

/** Something a person can do. One list of these feeds the menus, the keys, the buttons and the command finder. */
export interface PageCommand {
  readonly id: string;
  readonly group: Group;
  readonly label: string | ((page: Page) => string);
  /** Key combinations such as `Mod+Shift+Z`; Mod is Ctrl, on a Mac Cmd. The first one is shown. */
  readonly keys?: readonly string[];
  /** Handled by the grid itself; the keys are listed, not bound again. */
  readonly inGrid?: boolean;
  readonly icon?: IconName;
  /** Begins a new part of its menu. */
  readonly apart?: boolean;
  /** Words somebody may look for who does not know the label. */
  readonly searchWords?: string;
  /** Offered when this is clicked with the other button or pressed for long. */
  readonly over?: readonly ('cells' | 'columns' | 'rows')[];
  /** More than the label says, for whoever points at its button. */
  readonly hint?: (page: Page) => string | undefined;
  readonly enabled?: (page: Page) => boolean;
  /** For a command that switches something: whether it is on. */
  readonly on?: (page: Page) => boolean;
  readonly run: (page: Page) => void | Promise<void>;
}

export const labelOf = (command: PageCommand, page: Page): string =>
  typeof command.label === 'string' ? command.label : command.label(page);

/** Groups of commands that change what is selected in the sheet. */
const ofSelection: ReadonlySet<Group> = new Set(['Column', 'Row']);

/** A command for what is selected is none while a chart or rack mode is over the sheet: it would change what nobody sees. */
export function isEnabled(command: PageCommand, page: Page): boolean {
  const selected = command.over !== undefined || ofSelection.has(command.group);
  if (selected && (page.chart.value !== null || page.rack.value !== null)) return false;
  return command.enabled?.(page) ?? true;
}
