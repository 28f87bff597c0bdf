/** The dialogue for the handouts: their parts and their rules. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Json } from '../../book/model.ts';
import { type HandoutPart, type HandoutRule, handoutParts } from '../../session/handouts/handout-settings.ts';
import type { Handouts } from '../../session/handouts/handouts.ts';
import { Decide, Dialogue, Field } from '../dialogues/Dialogue.tsx';
import { guarded, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say } from '../state/page.ts';
import './handouts.css';
import { HandoutRuleFields } from './HandoutRuleFields.tsx';

const partWords: Readonly<Record<HandoutPart, string>> = {
  figure: 'Figure, flat and lifted',
  numbers: 'Measurements and results',
  observed: 'Where the observed lean comes from',
  findings: 'Findings',
  try: 'Suggestions',
  retest: 'Next test',
};

/** Handout text: sentences with the formulas that decide whether they are said, and when to test again. */
export function RulesForm({ close }: { close: () => void }) {
  const page = usePage();
  const made = useSignal<Handouts | null>(null);
  const rules = useSignal<readonly HandoutRule[]>([]);
  const weeks = useSignal('');
  const contact = useSignal('');
  const parts = useSignal<readonly HandoutPart[]>(handoutParts);
  useEffect(() => {
    void guarded(page, async () => {
      const answer = await page.service.handouts({ rows: [0] });
      rules.value = answer.settings.rules ?? answer.usualRules;
      weeks.value = String(answer.settings.retestWeeks ?? 8);
      contact.value = answer.settings.contact ?? '';
      parts.value = answer.settings.parts ?? handoutParts;
      made.value = answer;
      return true;
    });
  }, [page]);
  const change = (index: number, part: Partial<HandoutRule>) => {
    rules.value = rules.value.map((rule, i) => (i === index ? { ...rule, ...part } : rule));
  };
  const keep = async (event: Event) => {
    event.preventDefault();
    if (!made.value) return;
    const count = weeks.value.trim() === '' ? 0 : Number(weeks.value.replace(',', '.'));
    if (!(count >= 0 && count <= 520))
      return say(page, `"${weeks.value}" is not a number of weeks. Enter 0 to 520.`, 'wrong');
    if (parts.value.length === 0)
      return say(page, 'A handout needs at least one section. Tick the ones to print.', 'wrong');
    const { contact: _, parts: __, ...settings } = made.value.settings;
    const every = handoutParts.every((part) => parts.value.includes(part));
    const value = {
      ...settings,
      ...(every ? {} : { parts: parts.value }),
      rules: rules.value.filter(({ when, say }) => when.trim() !== '' && say.trim() !== ''),
      retestWeeks: count,
      ...(contact.value.trim() ? { contact: contact.value.trim() } : {}),
    };
    const done = await run(page, {
      do: 'set-part',
      part: 'handouts',
      key: 'settings',
      value: JSON.parse(JSON.stringify(value)) as Json,
      words: 'Change the handout text',
    });
    if (done) close();
  };
  return (
    <Dialogue title="Handout text" close={close} wide>
      <form class="form" onSubmit={(event) => void keep(event)}>
        <fieldset class="handout-parts" disabled={made.value === null}>
          <legend>Sections</legend>
          {handoutParts.map((part) => (
            <label key={part} class="tick">
              <input
                type="checkbox"
                checked={parts.value.includes(part)}
                onChange={(event) => {
                  const on = event.currentTarget.checked;
                  parts.value = handoutParts.filter((one) => (one === part ? on : parts.value.includes(one)));
                }}
              />{' '}
              {partWords[part]}
            </label>
          ))}
        </fieldset>
        <p class="soft">
          A sentence appears when its formula is true in the athlete’s row. A column or a setting in braces,
          such as <code>{'{lean}'}</code>, is filled in with its value.
        </p>
        <ul class="rule-list">
          {rules.value.map((rule, index) => (
            <HandoutRuleFields
              key={index}
              number={index + 1}
              rule={rule}
              sheet={made.value?.sheet ?? null}
              change={(part) => change(index, part)}
              remove={() => {
                rules.value = rules.value.filter((_, i) => i !== index);
              }}
            />
          ))}
        </ul>
        <button
          type="button"
          class="firm"
          onClick={() => {
            rules.value = [...rules.value, { part: 'finding', when: '', say: '' }];
          }}
        >
          Add sentence
        </button>
        <Field label="Weeks to the next test" hint="0 for none.">
          <input
            inputMode="numeric"
            disabled={made.value === null}
            value={weeks.value}
            onInput={(event) => {
              weeks.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label="Contact" hint="Printed at the foot of each page.">
          <input
            maxLength={300}
            disabled={made.value === null}
            value={contact.value}
            onInput={(event) => {
              contact.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Decide label="Save" close={close} disabled={made.value === null} />
      </form>
    </Dialogue>
  );
}
