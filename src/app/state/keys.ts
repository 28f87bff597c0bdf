/** A key combination, taken apart. */
interface Combination {
  readonly mod: boolean;
  readonly shift: boolean;
  readonly alt: boolean;
  readonly key: string;
}

const onMac = (): boolean => /Mac|iPhone|iPad/.test(globalThis.navigator?.platform ?? '');

function parse(keys: string): Combination {
  const parts = keys.split('+');
  const key = parts.pop() || '+';
  return { mod: parts.includes('Mod'), shift: parts.includes('Shift'), alt: parts.includes('Alt'), key };
}

/** Whether a key event is this combination. */
export function isPressed(keys: string, event: KeyboardEvent): boolean {
  const wanted = parse(keys);
  const mod = onMac() ? event.metaKey : event.ctrlKey;
  const other = onMac() ? event.ctrlKey : event.metaKey;
  return (
    mod === wanted.mod &&
    !other &&
    event.shiftKey === wanted.shift &&
    event.altKey === wanted.alt &&
    (event.key.toLowerCase() === wanted.key.toLowerCase() ||
      (wanted.alt && event.code === `Digit${wanted.key}`))
  );
}

const names: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Escape: 'Esc',
  Delete: 'Del',
};

/** The combination as a keyboard's owner reads it. */
export function keysInWords(keys: string): string {
  const { mod, shift, alt, key } = parse(keys);
  const shown = names[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  if (onMac()) return `${alt ? '⌥' : ''}${shift ? '⇧' : ''}${mod ? '⌘' : ''}${shown}`;
  return [mod && 'Ctrl', alt && 'Alt', shift && 'Shift', shown].filter(Boolean).join('+');
}
