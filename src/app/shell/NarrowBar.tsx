import { command } from '../commands/all.ts';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';
import { sides } from './SidePanel.tsx';

/** On narrow screens: what is beside the sheet elsewhere, one touch away. */
export function NarrowBar() {
  const page = usePage();
  return (
    <nav class="narrow-bar" aria-label="Panels">
      <button
        type="button"
        aria-pressed={page.contentsOpen.value}
        onClick={() => {
          page.side.value = null;
          page.contentsOpen.value = !page.contentsOpen.value;
        }}
      >
        <Icon name="contents" />
        Contents
      </button>
      {sides.map(({ id, title }) => (
        <button
          key={id}
          type="button"
          aria-pressed={page.side.value === id}
          onClick={() => {
            page.contentsOpen.value = false;
            page.side.value = page.side.value === id ? null : id;
          }}
        >
          <Icon name={id} />
          {title}
        </button>
      ))}
      <button type="button" onClick={() => void command('find-command').run(page)}>
        <Icon name="menu" />
        Commands
      </button>
    </nav>
  );
}
