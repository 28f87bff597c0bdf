import { isBehind } from '../state/front.ts';
import { isPressed } from '../state/keys.ts';
import type { Page } from '../state/page.ts';
import { Ahead } from './ahead.ts';
import { arrangeCommands } from './arrange.ts';
import { bookCommands } from './book.ts';
import { chartCommands } from './charts.ts';
import { columnCommands } from './column.ts';
import type { PageCommand } from './command.ts';
import { isEnabled } from './command.ts';
import { editCommands } from './edit.ts';
import { handoutCommands } from './handouts.ts';
import { helpCommands } from './help.ts';
import { rackCommands } from './rack.ts';
import { reportCommands } from './report.ts';
import { rowCommands } from './row.ts';
import { sheetCommands } from './sheet.ts';
import { viewCommands } from './view.ts';

/** Everything that can be done on the page, in the order of the menus. */
export const commands: readonly PageCommand[] = [
  ...bookCommands,
  ...chartCommands,
  ...handoutCommands,
  ...reportCommands,
  ...editCommands,
  ...sheetCommands,
  ...rackCommands,
  ...columnCommands,
  ...rowCommands,
  ...arrangeCommands,
  ...viewCommands,
  ...helpCommands,
];

const byId = new Map(commands.map((command) => [command.id, command]));

/** @throws Error for an id that no command has. */
export function command(id: string): PageCommand {
  const found = byId.get(id);
  if (!found) throw new Error(`no command "${id}"`);
  return found;
}

export async function perform(id: string, page: Page): Promise<void> {
  const found = command(id);
  if (isEnabled(found, page)) await found.run(page);
}

/** What has keys that mean something else in a text field. */
const ofCells: ReadonlySet<string> = new Set(['Edit', 'Column', 'Row']);

/** Binds the keys of the commands to the window. Answers how to unbind them. */
export function bindKeys(page: Page): () => void {
  const commandOf = (event: KeyboardEvent) =>
    commands.find(
      ({ keys, inGrid }) => !inGrid && keys?.some((combination) => isPressed(combination, event)),
    );
  const ahead = new Ahead(page, commandOf);
  const pressed = (event: KeyboardEvent) => {
    if (event.defaultPrevented) return;
    if (ahead.takes(event)) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    const typing = isTyping(event);
    const found = commandOf(event);
    if (!found || (typing && ofCells.has(found.group))) return;
    // What is printed then is what is in front.
    if (found.id === 'print-sheet' && isBehind()) return;
    event.preventDefault();
    event.stopPropagation();
    if (isBehind()) ahead.runLater(found);
    else if (isEnabled(found, page)) void found.run(page);
  };
  window.addEventListener('keydown', pressed, { capture: true });
  return () => window.removeEventListener('keydown', pressed, { capture: true });
}

/** True while the keys belong to a text field or a part with keys of its own: its undo, not the book's. */
function isTyping(event: KeyboardEvent): boolean {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target.closest('[role="application"]')) return true;
  if (target instanceof HTMLTextAreaElement) return true;
  return (
    target instanceof HTMLInputElement && !['checkbox', 'radio', 'range', 'button'].includes(target.type)
  );
}
