/** The fields of one rule that marks cells. */
import type { ColumnOutline } from '../../session/api.ts';
import type { RuleDraft } from '../../session/marks/draft.ts';
import { type Tone, tones } from '../../session/marks/mark-record.ts';
import type { RuleCount } from '../../session/marks/mark-rules.ts';
import { unitSign } from '../../units/sign.ts';
import { ToneSign } from './ToneSign.tsx';
import { toneAbout } from './tones.ts';

type Is = RuleDraft['is'];

const about: Readonly<Record<Is, string>> = {
  above: 'is above',
  'at least': 'is at least',
  below: 'is below',
  'at most': 'is at most',
  equal: 'is',
  unequal: 'is not',
  between: 'is between',
  outside: 'is outside',
  containing: 'contains',
  yes: 'is yes',
  no: 'is no',
  blank: 'is blank',
  filled: 'is not blank',
  true: 'makes this formula true',
};
const measured: readonly Is[] = [
  'above',
  'at least',
  'below',
  'at most',
  'between',
  'outside',
  'equal',
  'unequal',
];
const waysOf: Readonly<Record<ColumnOutline['kind'], readonly Is[]>> = {
  number: measured,
  date: measured,
  text: ['equal', 'unequal', 'containing'],
  choice: ['equal', 'unequal', 'containing'],
  'yes-no': ['yes', 'no'],
};
export const firstWay = (column: ColumnOutline): Is => waysOf[column.kind][0]!;
export const takesNothing = (is: Is): boolean => ['yes', 'no', 'blank', 'filled'].includes(is);

interface Props {
  readonly column: ColumnOutline;
  readonly rule: RuleDraft;
  /** From 1. */
  readonly number: number;
  readonly last: boolean;
  /** What it would do; none while that is worked out. */
  readonly tried: RuleCount | { readonly sentence: string } | undefined;
  readonly rows: number;
  /** Id of the list of names that may stand in for a number. */
  readonly names: string;
  readonly change: (part: Partial<RuleDraft>) => void;
  readonly move: (step: -1 | 1) => void;
  readonly remove: () => void;
}

/** One rule, as a sentence with blanks: where the column is so, mark it so, and say so. */
export function MarkRuleFields(props: Props) {
  const { column, rule, number, last, names, change, move, remove } = props;
  const ways = [...waysOf[column.kind], 'blank', 'filled', 'true'] as const;
  const formula = rule.is === 'true';
  const two = rule.is === 'between' || rule.is === 'outside';
  const note = noteOf(props);
  const noteId = `mark-note-${number}`;
  const input = (part: 'from' | 'to', label: string) => (
    <input
      class={formula ? 'formula' : undefined}
      aria-label={label}
      aria-describedby={noteId}
      aria-invalid={note.wrong || undefined}
      spellcheck={false}
      maxLength={8192}
      list={formula ? undefined : names}
      placeholder={formula ? `${column.name} > …` : column.kind === 'number' ? 'number or name' : undefined}
      value={rule[part] ?? ''}
      onInput={(event) => change({ [part]: event.currentTarget.value })}
    />
  );
  return (
    <fieldset class={`mark-rule ${rule.tone}`}>
      <legend>Rule {number}</legend>
      <div class="mark-line">
        <span>
          Where <strong>{column.label}</strong>
        </span>
        <select
          aria-label="How it compares"
          value={rule.is}
          onChange={(event) => change({ is: event.currentTarget.value as Is })}
        >
          {ways.map((is) => (
            <option key={is} value={is}>
              {about[is]}
            </option>
          ))}
        </select>
        {two && (
          <>
            {input('from', 'Lower end')}
            <span>and</span>
          </>
        )}
        {!takesNothing(rule.is) && input('to', formula ? 'Formula' : two ? 'Upper end' : 'Compared with')}
        {!takesNothing(rule.is) && !formula && column.unit && (
          <span class="soft">{unitSign(column.unit)}</span>
        )}
      </div>
      <div class="mark-line">
        <span>mark it</span>
        <ToneSign tone={rule.tone} />
        <select
          aria-label="Mark"
          value={rule.tone}
          onChange={(event) => change({ tone: event.currentTarget.value as Tone })}
        >
          {tones.map((tone) => (
            <option key={tone} value={tone}>
              {tone}: {toneAbout[tone]}
            </option>
          ))}
        </select>
        <span>with note</span>
        <input
          aria-label="Your note"
          placeholder="No note"
          maxLength={200}
          value={rule.says ?? ''}
          onInput={(event) => change({ says: event.currentTarget.value })}
        />
      </div>
      <div class="mark-line">
        <p id={noteId} class={note.wrong ? 'mark-note wrong' : 'mark-note'}>
          {note.text}
        </p>
        <span class="mark-order">
          <button
            type="button"
            class="firm"
            aria-label={`Rule ${number}: move up`}
            disabled={number === 1}
            onClick={() => move(-1)}
          >
            Move up
          </button>
          <button
            type="button"
            class="firm"
            aria-label={`Rule ${number}: move down`}
            disabled={last}
            onClick={() => move(1)}
          >
            Move down
          </button>
          <button type="button" class="firm" aria-label={`Rule ${number}: remove`} onClick={remove}>
            Remove
          </button>
        </span>
      </div>
    </fieldset>
  );
}

/** How many rows the rule is about, or what is wrong with it; nothing is wrong while nothing was typed yet. */
function noteOf({ tried, rows, rule }: Props): { text: string; wrong: boolean } {
  if (!tried) return { text: '…', wrong: false };
  if (!('holds' in tried)) {
    const untouched = !takesNothing(rule.is) && !rule.to?.trim() && !rule.from?.trim();
    return untouched
      ? { text: 'Complete the rule to see which rows match.', wrong: false }
      : { text: tried.sentence, wrong: true };
  }
  const { holds, shows, errors, sentence } = tried;
  const before = holds - shows;
  const parts = [
    `Matches ${holds} of ${rows} rows${before > 0 ? `; ${before} of them already marked by an earlier rule` : ''}.`,
    ...(errors > 0 ? [`No answer in ${errors} ${errors === 1 ? 'row' : 'rows'}: ${sentence}`] : []),
  ];
  return { text: parts.join(' '), wrong: errors > 0 };
}
