/** A large field of rack mode for one test, with its trials. */
import { useId } from 'preact/hooks';
import type { ColumnOutline } from '../../session/api.ts';
import type { Locale } from '../../units/locale.ts';
import { writeNumber } from '../../units/number.ts';
import { enteredFrom } from './trials.ts';

interface Props {
  readonly label: string;
  /** Left or right; empty where a measure has no sides. */
  readonly side: string;
  readonly column: ColumnOutline;
  readonly trials: readonly string[];
  /** The cell has a formula of its own; shown, not edited. */
  readonly display?: string;
  readonly locale: Locale;
  readonly type: (trials: readonly string[]) => void;
  readonly leave: () => void;
}

/** Three trials of one measure on one side, and their mean. */
export function TestField({ label, side, column, trials, display, locale, type, leave }: Props) {
  const id = useId();
  const { mean, problem } = enteredFrom(trials, column, locale);
  const unit = column.sign ? ` ${column.sign}` : '';
  const count = trials.filter((text) => text.trim() !== '').length;
  const called = `${label}${side ? `, ${side.toLowerCase()}` : ''}`;
  if (display !== undefined)
    return (
      <p class="rack-row">
        <span class="rack-side">{side}</span>
        <span>
          {display}
          {unit}: a formula of its own. Change it in the sheet.
        </span>
      </p>
    );
  return (
    <div class="rack-row">
      <span class="rack-side">{side || (unit ? unit.trim() : 'Value')}</span>
      {trials.map((text, at) => (
        <input
          // biome-ignore lint/suspicious/noArrayIndexKey: trials have no other name than their place
          key={at}
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="next"
          aria-label={`${called}, trial ${at + 1}${unit}`}
          aria-invalid={problem?.at === at}
          {...(problem?.at === at ? { 'aria-describedby': id } : {})}
          value={text}
          onInput={(event) => type(trials.map((one, i) => (i === at ? event.currentTarget.value : one)))}
          onChange={leave}
          onFocus={(event) => event.currentTarget.select()}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            nextField(event.currentTarget)?.focus();
          }}
        />
      ))}
      <output aria-label={`${called}, mean`}>
        {mean === null || count < 2
          ? ''
          : `mean ${writeNumber(Number(mean.toFixed(column.format?.digits ?? 1)), {}, locale)}${unit}`}
      </output>
      {problem && (
        <span class="rack-problem" id={id} role="alert">
          {problem.sentence} Enter a number{unit ? ` in ${unit.trim()}` : ''}.
        </span>
      )}
    </div>
  );
}

/** The field after this one, in the order of the page. */
function nextField(now: HTMLInputElement): HTMLInputElement | undefined {
  const all = [...(now.closest('.rack')?.querySelectorAll<HTMLInputElement>('.rack-row input') ?? [])];
  return all[all.indexOf(now) + 1];
}
