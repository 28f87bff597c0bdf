import { command } from '../commands/all.ts';
import { groups } from '../commands/command.ts';
import { usePage } from '../state/context.ts';
import { theme } from '../state/look.ts';
import { Icon } from '../theme/icons.tsx';
import { CommandButton } from './CommandButton.tsx';
import { GroupMenu } from './Menu.tsx';

/** Title and menus on top. */
export function Header() {
  const page = usePage();
  const outline = page.outline.value;
  return (
    <header class="head">
      <button type="button" class="mark" title="Books" onClick={() => void command('books').run(page)}>
        <Icon name="lever" />
        <span class="mark-name">Leverbook</span>
        <span class="unseen">: books</span>
      </button>
      <h1 class="book-title">{outline?.title ?? ''}</h1>
      {outline && <Kept />}
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
          <span>Find</span>
          <kbd>F1</kbd>
        </button>
      </div>
    </header>
  );
}

/** Whether the work is safe: saved in this browser, and in its file or not. */
function Kept() {
  const page = usePage();
  const keeping = page.keeping.value;
  if (keeping?.state === 'not kept' || keeping?.state === 'reading')
    return (
      <span class="saved wrong" role="status" title={keeping.sentence}>
        <Icon name="doubts" />
        <span class="saved-words">
          {keeping.state === 'reading' ? 'Open in another tab: read only here' : 'Not saved: save to a file'}
        </span>
      </span>
    );
  const kept =
    keeping?.state === 'keeping' ? 'Saving…' : keeping?.id === undefined ? '' : 'Saved in this browser';
  const file = page.file.value === null ? '' : page.unsaved.value ? 'file not up to date' : 'file up to date';
  return <span class="saved">{[kept, file].filter(Boolean).join('; ')}</span>;
}

/** Light or dark at one touch; the device's own comes back through the View menu. */
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
