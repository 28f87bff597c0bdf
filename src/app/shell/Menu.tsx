import { useSignal } from '@preact/signals';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { commands } from '../commands/all.ts';
import type { Group, PageCommand } from '../commands/command.ts';
import { labelOf } from '../commands/command.ts';
import { whyNot } from '../commands/why-not.ts';
import { usePage } from '../state/context.ts';
import { keysInWords } from '../state/keys.ts';
import { Icon } from '../theme/icons.tsx';

/** A button that opens the commands of a group. */
export function GroupMenu({ group }: { group: Group }) {
  const open = useSignal(false);
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const list = commands.filter((one) => one.group === group);
  if (list.length === 0) return null;
  return (
    <div class="menu-place">
      <button
        ref={button}
        type="button"
        aria-haspopup="menu"
        aria-expanded={open.value}
        aria-controls={id}
        onClick={() => {
          open.value = !open.value;
        }}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown') return;
          event.preventDefault();
          open.value = true;
        }}
      >
        {group}
      </button>
      {open.value && (
        <CommandMenu
          id={id}
          label={group}
          commands={list}
          close={(back) => {
            open.value = false;
            if (back) button.current?.focus();
          }}
        />
      )}
    </div>
  );
}

interface MenuProps {
  readonly id?: string;
  readonly label: string;
  readonly commands: readonly PageCommand[];
  /** `back` when the focus should go where it came from. */
  readonly close: (back: boolean) => void;
}

/** The list that opens: arrows move, letters jump, Escape closes. */
export function CommandMenu({ id, label, commands: list, close }: MenuProps) {
  const page = usePage();
  const menu = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    menu.current?.querySelector<HTMLElement>('[role^="menuitem"]:not([aria-disabled])')?.focus();
    const outside = (event: PointerEvent) => {
      if (!menu.current?.parentElement?.contains(event.target as Node)) close(false);
    };
    window.addEventListener('pointerdown', outside, { capture: true });
    return () => window.removeEventListener('pointerdown', outside, { capture: true });
  }, []);
  const move = (event: KeyboardEvent) => {
    const items = [...(menu.current?.querySelectorAll<HTMLElement>('[role^="menuitem"]') ?? [])];
    const now = items.indexOf(document.activeElement as HTMLElement);
    const to = (index: number) => items[(index + items.length) % items.length]?.focus();
    if (event.key === 'ArrowDown') to(now + 1);
    else if (event.key === 'ArrowUp') to(now - 1);
    else if (event.key === 'Home') to(0);
    else if (event.key === 'End') to(-1);
    else if (event.key === 'Escape') close(true);
    else if (event.key === 'Tab') return close(false);
    else if (event.key.length === 1 && !event.ctrlKey && !event.metaKey) {
      const letter = event.key.toLowerCase();
      const next = [...items.slice(now + 1), ...items].find((item) =>
        item.textContent?.toLowerCase().startsWith(letter),
      );
      next?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div ref={menu} id={id} class="menu" role="menu" aria-label={label} onKeyDown={move}>
      {list.map((one) => {
        const on = one.on?.(page);
        const why = whyNot(one, page);
        return (
          <button
            key={one.id}
            class={one.apart ? 'apart' : undefined}
            type="button"
            {...(on === undefined
              ? { role: 'menuitem' as const }
              : { role: 'menuitemcheckbox' as const, 'aria-checked': on })}
            aria-disabled={why === undefined ? undefined : true}
            title={why}
            onClick={() => {
              if (why !== undefined) return;
              close(true);
              void one.run(page);
            }}
          >
            <span class="menu-icon">{on ? <Icon name="check" /> : one.icon && <Icon name={one.icon} />}</span>
            <span class="menu-label">
              {labelOf(one, page)}
              {why !== undefined && (
                <span class="menu-why" aria-hidden="true">
                  {why}
                </span>
              )}
            </span>
            {one.keys?.[0] && <kbd>{keysInWords(one.keys[0])}</kbd>}
          </button>
        );
      })}
    </div>
  );
}
