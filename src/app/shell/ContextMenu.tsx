import { useLayoutEffect, useRef } from 'preact/hooks';
import { commands } from '../commands/all.ts';
import { usePage } from '../state/context.ts';
import { focusCentre } from '../state/focus.ts';
import { CommandMenu } from './Menu.tsx';

/** The menu over the grid, kept inside the window. */
export function ContextMenu() {
  const page = usePage();
  const place = useRef<HTMLDivElement>(null);
  const request = page.contextMenu.value;
  useLayoutEffect(() => {
    const box = place.current;
    if (!box || !request) return;
    const { width, height } = box.getBoundingClientRect();
    box.style.left = `${Math.max(4, Math.min(request.x, innerWidth - width - 4))}px`;
    box.style.top = `${Math.max(4, Math.min(request.y, innerHeight - height - 4))}px`;
  }, [request]);
  if (!request) return null;
  return (
    <div ref={place} class="context-menu">
      <CommandMenu
        label="Commands here"
        commands={commands.filter(({ over }) => over?.includes(request.over))}
        close={(back) => {
          page.contextMenu.value = null;
          if (back) focusCentre(page);
        }}
      />
    </div>
  );
}
