import { command } from '../commands/all.ts';
import { labelOf } from '../commands/command.ts';
import { whyNot } from '../commands/why-not.ts';
import { usePage } from '../state/context.ts';
import { keysInWords } from '../state/keys.ts';
import { Icon } from '../theme/icons.tsx';

/** A button for a command of the list. `short` shows its icon alone. */
export function CommandButton({
  id,
  short,
  kind,
}: {
  id: string;
  short?: boolean;
  kind?: 'firm' | 'strong';
}) {
  const page = usePage();
  const found = command(id);
  const label = labelOf(found, page);
  const [keys] = found.keys ?? [];
  const why = whyNot(found, page);
  const hint = why ?? found.hint?.(page);
  return (
    <button
      type="button"
      class={[short ? 'tool' : '', kind ?? ''].join(' ').trim()}
      disabled={why !== undefined}
      aria-label={short ? label : undefined}
      aria-pressed={found.on?.(page)}
      title={`${keys ? `${label} (${keysInWords(keys)})` : label}${hint ? `. ${hint}` : ''}`}
      onClick={() => void found.run(page)}
    >
      {found.icon && <Icon name={found.icon} />}
      {!short && <span>{label}</span>}
    </button>
  );
}
