/** What all dialogues share: title, keys, errors and the buttons that decide. */
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { Icon } from '../theme/icons.tsx';

interface Props {
  readonly title: string;
  readonly close: () => void;
  readonly children: ComponentChildren;
  readonly wide?: boolean;
}

/** A modal dialogue with a title and a way out. */
export function Dialogue({ title, close, children, wide }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('form input, form select, form textarea')?.focus();
  }, []);
  return (
    <dialog ref={dialog} class={wide ? 'dialogue wide' : 'dialogue'} aria-label={title} onClose={close}>
      <header class="dialogue-head">
        <h2>{title}</h2>
        <button type="button" class="tool" aria-label="Close" onClick={() => dialog.current?.close()}>
          <Icon name="close" />
        </button>
      </header>
      {children}
    </dialog>
  );
}

/** The buttons at the end of a form: do it, or leave it. */
export function Decide({ label, close, disabled }: { label: string; close: () => void; disabled?: boolean }) {
  return (
    <footer class="decide">
      <button type="button" class="firm" onClick={close}>
        Cancel
      </button>
      <button type="submit" class="strong" disabled={disabled}>
        {label}
      </button>
    </footer>
  );
}

/** A labelled field. */
export function Field({
  label,
  hint,
  children,
}: {
  label: string;
  hint?: string | undefined;
  children: ComponentChildren;
}) {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is handed in as the child
    <label class="field">
      <span class="field-label">{label}</span>
      {children}
      {hint && <span class="field-hint">{hint}</span>}
    </label>
  );
}
