import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { commands } from '../commands/all.ts';
import { isEnabled, labelOf } from '../commands/command.ts';
import { rank } from '../commands/rank.ts';
import { usePage } from '../state/context.ts';
import { keysInWords } from '../state/keys.ts';

/** The command finder: type a few letters, Enter runs the first that fits. */
export function Finder() {
  const page = usePage();
  const dialog = useRef<HTMLDialogElement>(null);
  const text = useSignal('');
  const at = useSignal(0);
  const open = page.finderOpen.value;
  // Before the next key is heard: what is typed after F1 belongs to the finder.
  useLayoutEffect(() => {
    if (!open) return dialog.current?.close();
    text.value = '';
    at.value = 0;
    // A click beside it closes it, in browsers that know how.
    dialog.current?.setAttribute('closedby', 'any');
    dialog.current?.showModal();
  }, [open]);
  const found = open
    ? rank(
        commands.filter((one) => isEnabled(one, page) && one.id !== 'find-command'),
        text.value,
        (one) => `${labelOf(one, page)} ${one.group} ${one.searchWords ?? ''}`,
      )
    : [];
  const close = () => {
    page.finderOpen.value = false;
  };
  const take = (index: number) => {
    const chosen = found[index];
    close();
    if (chosen) void chosen.run(page);
  };
  const typed = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown') at.value = Math.min(at.value + 1, found.length - 1);
    else if (event.key === 'ArrowUp') at.value = Math.max(at.value - 1, 0);
    else if (event.key === 'Enter') take(at.value);
    else return;
    event.preventDefault();
    document.getElementById(`finder-${at.value}`)?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <dialog ref={dialog} class="finder" aria-label="Find a command" onClose={close}>
      <input
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls="finder-list"
        aria-activedescendant={found.length ? `finder-${at.value}` : undefined}
        aria-label="What do you want to do?"
        placeholder="What do you want to do?"
        autocomplete="off"
        spellcheck={false}
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
          at.value = 0;
        }}
        onKeyDown={typed}
      />
      <div id="finder-list" role="listbox" aria-label="Commands" class="finder-list">
        {found.map((one, index) => (
          <div
            key={one.id}
            id={`finder-${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === at.value}
            onPointerMove={() => {
              at.value = index;
            }}
            onClick={() => take(index)}
            onKeyDown={typed}
          >
            <span class="soft">{one.group}</span>
            <span>{labelOf(one, page)}</span>
            {one.keys?.[0] && <kbd>{keysInWords(one.keys[0])}</kbd>}
          </div>
        ))}
      </div>
      {open && found.length === 0 && <p class="panel-note">No command has these words. Try fewer letters.</p>}
    </dialog>
  );
}
