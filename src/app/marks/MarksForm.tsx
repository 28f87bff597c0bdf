/** The dialogue for the marks of a column. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import type { MarksDraft, RuleDraft } from '../../session/marks/draft.ts';
import type { TriedMarks } from '../../session/marks/tried-marks.ts';
import { Decide, Dialogue } from '../dialogues/Dialogue.tsx';
import { guarded, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { settle } from '../state/page.ts';
import { DrawnFields } from './DrawnFields.tsx';
import { firstWay, MarkRuleFields, takesNothing } from './MarkRuleFields.tsx';
import './marks.css';
import './form.css';

interface Props {
  readonly sheet: SheetOutline;
  readonly column: ColumnOutline;
  readonly close: () => void;
}

/** Milliseconds after the last key until the counts are worked out anew. */
const pause = 150;
const namesId = 'names-for-marks';
const mostRules = 30;

/** The marks on a column: rules in words, each with the number of rows it holds in, and what is drawn into its cells. */
export function MarksForm({ sheet, column, close }: Props) {
  const page = usePage();
  const draft = useSignal<MarksDraft | null>(null);
  const tried = useSignal<TriedMarks | null>(null);
  const wrong = useSignal<string | null>(null);
  const list = useRef<HTMLDivElement>(null);
  const turn = useRef(0);
  const blank = (): RuleDraft => ({ is: firstWay(column), to: '', tone: 'attend' });
  useEffect(() => {
    void guarded(page, async () => {
      const known = await page.service.marks(sheet.id, column.id);
      const some = known.rules.length > 0 || known.scale || known.trend;
      draft.value = some ? known : { rules: [blank()] };
      return true;
    }).then((read) => {
      if (!read) close();
    });
  }, []);
  useSignalEffect(() => {
    const now = draft.value;
    if (!now) return;
    const mine = ++turn.current;
    const timer = setTimeout(() => {
      page.service.triedMarks(sheet.id, column.id, now).then(
        (answer) => {
          if (mine === turn.current) tried.value = answer;
        },
        (reason: unknown) => {
          if (mine === turn.current) wrong.value = reason instanceof Error ? reason.message : String(reason);
        },
      );
    }, pause);
    return () => clearTimeout(timer);
  });
  const now = draft.value;
  if (!now) return null;

  const put = (next: MarksDraft) => {
    wrong.value = null;
    draft.value = next;
  };
  /** The same after another number of rules, or another order: counts of before would stand at the wrong ones. */
  const reorder = (rules: readonly RuleDraft[], focus: string) => {
    tried.value = null;
    put({ ...now, rules: [...rules] });
    requestAnimationFrame(() => list.current?.querySelector<HTMLElement>(focus)?.focus());
  };
  const move = (index: number, step: -1 | 1) => {
    const rules = [...now.rules];
    const [rule] = rules.splice(index, 1);
    rules.splice(index + step, 0, rule!);
    const moved = `fieldset:nth-of-type(${index + step + 1})`;
    const enabled = index + step === 0 ? 'down' : index + step === rules.length - 1 ? 'up' : '';
    const which = enabled || (step < 0 ? 'up' : 'down');
    reorder(rules, `${moved} button[aria-label$="move ${which}"]`);
  };
  const submit = async (event: Event): Promise<boolean> => {
    event.preventDefault();
    const rules = now.rules.filter(
      ({ is, from, to, says }) => takesNothing(is) || [from, to, says].some((text) => text?.trim()),
    );
    const marks = JSON.parse(JSON.stringify({ ...now, rules })) as MarksDraft;
    const answer = await page.service.run({ do: 'set-marks', sheet: sheet.id, column: column.id, marks });
    if (!answer.ok) {
      wrong.value = answer.sentence;
      return false;
    }
    close();
    return settle(page, answer);
  };
  const removable = column.marks !== undefined;
  return (
    <Dialogue title={`Marks on ${column.label}`} close={close} wide>
      <form class="form" onSubmit={(event) => void guarded(page, () => submit(event))}>
        <p class="soft">
          The first matching rule applies. Enter numbers in the unit of the column, or use a setting, another
          column or a formula.
        </p>
        <div class="mark-rules" ref={list}>
          {now.rules.map((rule, index) => (
            <MarkRuleFields
              key={index}
              column={column}
              rule={rule}
              number={index + 1}
              last={index === now.rules.length - 1}
              tried={tried.value?.rules[index]}
              rows={tried.value?.rows ?? sheet.rows}
              names={namesId}
              change={(part) =>
                put({ ...now, rules: now.rules.map((one, i) => (i === index ? { ...one, ...part } : one)) })
              }
              move={(step) => move(index, step)}
              remove={() =>
                reorder(
                  now.rules.filter((_, i) => i !== index),
                  `fieldset:nth-of-type(${Math.max(1, index)}) select, button.mark-another`,
                )
              }
            />
          ))}
          {now.rules.length === 0 && <p class="soft">This column has no rules yet.</p>}
          <button
            type="button"
            class="firm mark-another"
            disabled={now.rules.length >= mostRules}
            onClick={() =>
              reorder([...now.rules, blank()], `fieldset:nth-of-type(${now.rules.length + 1}) select`)
            }
          >
            Add rule
          </button>
        </div>
        <datalist id={namesId}>
          {page.outline.value?.names.map(({ name, display }) => (
            <option key={name} value={name}>
              {display}
            </option>
          ))}
          {sheet.columns
            .filter(({ id, kind }) => id !== column.id && kind === column.kind)
            .map(({ id, name, label }) => (
              <option key={id} value={name}>
                {label}
              </option>
            ))}
        </datalist>
        <DrawnFields
          sheet={sheet}
          sheets={page.outline.value?.sheets ?? []}
          column={column}
          draft={now}
          tried={tried.value}
          names={namesId}
          change={(part) => put({ ...now, ...part })}
        />
        <p role="status" class={wrong.value ? 'mark-note wrong' : 'unseen'}>
          {wrong.value ?? inWords(tried.value)}
        </p>
        <div class="mark-decide">
          {removable && (
            <button
              type="button"
              class="firm"
              onClick={() =>
                void run(page, { do: 'set-marks', sheet: sheet.id, column: column.id, marks: null }).then(
                  (done) => {
                    if (done) close();
                  },
                )
              }
            >
              Remove all
            </button>
          )}
          <Decide label="Save marks" close={close} />
        </div>
      </form>
    </Dialogue>
  );
}

/** What the rules come to, for whoever hears the page: told once typing pauses. */
const inWords = (tried: TriedMarks | null): string =>
  (tried?.rules ?? [])
    .map((one, index) => `Rule ${index + 1}: ${'holds' in one ? `${one.holds} rows` : one.sentence}`)
    .join('. ');
