import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Athlete, type Find, finds } from '../commands/finds.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { builtInHelp, functionHelp, loadBuiltIns, loadFunctions } from '../state/functions.ts';

/** The finder: type a few letters, Enter takes the first that fits. */
export function Finder() {
  const page = usePage();
  const dialog = useRef<HTMLDialogElement>(null);
  const text = useSignal('');
  const at = useSignal(0);
  const athletes = useSignal<readonly Athlete[]>([]);
  const open = page.finderOpen.value;
  // Before the next key is heard: what is typed after F1 belongs to the finder.
  useLayoutEffect(() => {
    if (!open) return dialog.current?.close();
    text.value = '';
    at.value = 0;
    // A click beside it closes it, in browsers that know how.
    dialog.current?.setAttribute('closedby', 'any');
    dialog.current?.showModal();
    void loadFunctions(page);
    void loadBuiltIns(page);
    import('../commands/athletes.ts')
      .then(({ athletesOf }) => athletesOf(page))
      .then((all) => {
        athletes.value = all;
      }, gone);
  }, [open]);
  const groups = open ? finds(page, text.value, [functionHelp.value, builtInHelp.value], athletes.value) : [];
  const flat = groups.flatMap(({ items }) => items);
  const close = () => {
    page.finderOpen.value = false;
  };
  const take = (one: Find | undefined) => {
    // What cannot be taken says why; the finder stays.
    if (one?.why !== undefined) return;
    close();
    one?.take();
  };
  const typed = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown') at.value = Math.min(at.value + 1, flat.length - 1);
    else if (event.key === 'ArrowUp') at.value = Math.max(at.value - 1, 0);
    else if (event.key === 'Enter') take(flat[at.value]);
    else return;
    event.preventDefault();
    document.getElementById(`finder-${at.value}`)?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <dialog ref={dialog} class="finder" aria-label="Find" onClose={close}>
      <input
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls="finder-list"
        aria-activedescendant={flat.length ? `finder-${at.value}` : undefined}
        aria-label="Type a command, a sheet or a function"
        placeholder="Type a command, a sheet or a function"
        autocomplete="off"
        spellcheck={false}
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
          at.value = 0;
        }}
        onKeyDown={typed}
      />
      <div id="finder-list" role="listbox" aria-label="Found" class="finder-list">
        {groups.map(({ title, items }) => (
          // biome-ignore lint/a11y/useSemanticElements: options of a listbox are grouped by this role
          <div key={title} role="group" aria-label={title}>
            <p class="finder-heading" aria-hidden="true">
              {title}
            </p>
            {items.map((one) => {
              const index = flat.indexOf(one);
              return (
                <div
                  key={one.id}
                  id={`finder-${index}`}
                  role="option"
                  tabIndex={-1}
                  aria-selected={index === at.value}
                  aria-disabled={one.why !== undefined}
                  onPointerMove={() => {
                    at.value = index;
                  }}
                  onClick={() => take(one)}
                  onKeyDown={typed}
                >
                  <span class="finder-label">{one.label}</span>
                  <span class="finder-about soft">{one.why ?? one.about}</span>
                  {one.keys && <kbd>{one.keys}</kbd>}
                </div>
              );
            })}
          </div>
        ))}
      </div>
      {open && flat.length === 0 && <p class="panel-note">Nothing matches these words. Try fewer letters.</p>}
    </dialog>
  );
}
