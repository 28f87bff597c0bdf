/** The fields of one rule of the handouts. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { HandoutRule } from '../../session/handouts/handout-settings.ts';
import type { TriedRule } from '../../session/handouts/tried-rule.ts';
import { usePage } from '../state/context.ts';

interface Props {
  /** Counted from 1. */
  readonly number: number;
  readonly rule: HandoutRule;
  /** Id of the sheet that handouts are made from; null until it is known. */
  readonly sheet: string | null;
  readonly change: (part: Partial<HandoutRule>) => void;
  readonly remove: () => void;
}

/** Milliseconds after the last key until the rule is tried. */
const pause = 150;

/** A sentence with the formula that decides whether it is said; what is wrong with either is said below it. */
export function HandoutRuleFields({ number, rule, sheet, change, remove }: Props) {
  const page = usePage();
  const tried = useSignal<TriedRule | null>(null);
  const { part, when, say } = rule;
  useEffect(() => {
    if (sheet === null || when.trim() === '') {
      tried.value = null;
      return;
    }
    let current = true;
    const take = (answer: TriedRule) => {
      if (current) tried.value = answer;
    };
    const timer = setTimeout(() => {
      page.service
        .triedRule(sheet, rule)
        .then(take, (reason: unknown) =>
          take({ text: '', sentence: reason instanceof Error ? reason.message : String(reason) }),
        );
    }, pause);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [sheet, when, say]);
  const { sentence } = tried.value ?? {};
  const id = `rule-tried-${number}`;
  return (
    <li>
      <select
        aria-label={`Section of sentence ${number}`}
        value={part}
        onChange={(event) => change({ part: event.currentTarget.value as HandoutRule['part'] })}
      >
        <option value="finding">Findings</option>
        <option value="try">Suggestions</option>
      </select>
      <input
        class="formula"
        aria-label={`Formula of sentence ${number}`}
        aria-describedby={id}
        aria-invalid={sentence !== undefined || undefined}
        spellcheck={false}
        maxLength={2000}
        value={when}
        onInput={(event) => change({ when: event.currentTarget.value })}
      />
      <button type="button" class="firm" aria-label={`Remove sentence ${number}`} onClick={remove}>
        Remove
      </button>
      <p
        id={id}
        role="status"
        class={sentence === undefined ? 'rule-tried soft' : 'rule-tried rule-wrong wrong-note'}
      >
        {sentence ?? tried.value?.text}
      </p>
      <textarea
        aria-label={`Sentence ${number}`}
        maxLength={1000}
        value={say}
        onInput={(event) => change({ say: event.currentTarget.value })}
      />
    </li>
  );
}
