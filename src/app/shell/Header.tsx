import { command } from '../commands/all.ts';
import { groups } from '../commands/command.ts';
import { theme } from '../state/look.ts';
import { CommandButton } from './CommandButton.tsx';
import { usePage } from './context.ts';
import { Icon } from './icons.tsx';
import { GroupMenu } from './Menu.tsx';

/** Title and menus on top. */
export function Header() {
  const page = usePage();
  const outline = page.outline.value;
  return (
    <header class="head">
      <p class="mark" title="Leverbook">
        <Icon name="lever" />
        <span class="mark-name">Leverbook</span>
      </p>
      <h1 class="book-title">{outline?.title ?? ''}</h1>
      {outline && (
        <span class={`saved${page.unsaved.value ? ' unsaved' : ''}`}>
          {page.unsaved.value ? 'changed, not saved to a file' : 'as in its file'}
        </span>
      )}
      <nav class="menus" aria-label="Menus">
        {groups.map((group) => (
          <GroupMenu key={group} group={group} />
        ))}
      </nav>
      <div class="head-tools">
        <CommandButton id="undo" short />
        <CommandButton id="redo" short />
        <CommandButton id="save-book" short />
        <ThemeButton />
        <button
          type="button"
          class="finder-button firm"
          onClick={() => void command('find-command').run(page)}
        >
          <Icon name="find" />
          <span>Find a command</span>
          <kbd>F1</kbd>
        </button>
      </div>
    </header>
  );
}

/** Light or dark at one touch; what the device says comes back through the View menu. */
function ThemeButton() {
  const page = usePage();
  const dark =
    theme.value === 'dark' ||
    (theme.value === 'system' && matchMedia('(prefers-color-scheme: dark)').matches);
  return (
    <button
      type="button"
      class="tool"
      aria-label={dark ? 'Light' : 'Dark'}
      title={dark ? 'Light' : 'Dark'}
      onClick={() => void command(dark ? 'theme-light' : 'theme-dark').run(page)}
    >
      <Icon name={dark ? 'light' : 'dark'} />
    </button>
  );
}
