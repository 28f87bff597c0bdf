import { useEffect, useRef } from 'preact/hooks';
import { commands } from '../commands/all.ts';
import { groups, labelOf } from '../commands/command.ts';
import { keysInWords } from '../commands/keys.ts';
import { usePage } from './context.ts';
import { Icon } from './icons.tsx';

/** The dialogues of the page; one at a time. */
export function Dialogues() {
  const page = usePage();
  const dialog = useRef<HTMLDialogElement>(null);
  const which = page.dialogue.value;
  useEffect(() => {
    if (which) dialog.current?.showModal();
    else dialog.current?.close();
  }, [which]);
  const close = () => {
    page.dialogue.value = null;
  };
  return (
    <dialog ref={dialog} class="dialogue" aria-label="All keys" onClose={close}>
      {which === 'keys' && <Keys close={close} />}
    </dialog>
  );
}

const gridKeys: readonly (readonly [string, string])[] = [
  ['Arrows, Tab, Enter', 'Move'],
  ['Ctrl+Arrows', 'Move to the end of the sheet'],
  ['Shift+Arrows', 'Choose more cells'],
  ['Ctrl+A', 'Choose the whole sheet'],
  ['F2 or typing', 'Edit the cell'],
  ['Escape', 'Leave the cell as it was'],
];

function Keys({ close }: { close: () => void }) {
  const page = usePage();
  return (
    <>
      <header class="dialogue-head">
        <h2>Keys</h2>
        <button type="button" class="tool" aria-label="Close" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <div class="keys">
        <section>
          <h3>In the sheet</h3>
          <dl>
            {gridKeys.map(([keys, does]) => (
              <div key={keys}>
                <dt>{does}</dt>
                <dd>
                  <kbd>{keys}</kbd>
                </dd>
              </div>
            ))}
          </dl>
        </section>
        {groups.map((group) => {
          const list = commands.filter((one) => one.group === group && one.keys);
          return (
            list.length > 0 && (
              <section key={group}>
                <h3>{group}</h3>
                <dl>
                  {list.map((one) => (
                    <div key={one.id}>
                      <dt>{labelOf(one, page)}</dt>
                      <dd>
                        {one.keys?.map((keys) => (
                          <kbd key={keys}>{keysInWords(keys)}</kbd>
                        ))}
                      </dd>
                    </div>
                  ))}
                </dl>
              </section>
            )
          );
        })}
      </div>
    </>
  );
}
