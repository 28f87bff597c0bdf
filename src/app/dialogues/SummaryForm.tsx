/** The dialogue for a formula of the summary row. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import type { FormulaSummary } from '../../session/sheet/own-summary.ts';
import { type OwnSummary, type Statistic, statistics } from '../../session/sheet/sheet-view.ts';
import { statisticNames } from '../../session/sheet/statistic-names.ts';
import { unitSign } from '../../units/sign.ts';
import { changeView } from '../state/change-view.ts';
import { usePage } from '../state/context.ts';
import { nameOf } from '../state/shown.ts';
import { Decide, Dialogue, Field } from './Dialogue.tsx';

interface Props {
  readonly sheet: SheetOutline;
  readonly column: ColumnOutline;
  readonly close: () => void;
}

/** Milliseconds after the last key until the formula is tried. */
const pause = 150;

/** What a column shows in the line of summaries below the sheet and below each group: a figure, or a formula. */
export function SummaryForm({ sheet, column, close }: Props) {
  const page = usePage();
  const own = sheet.view?.summaries?.find((one) => one.column === column.id);
  const written = own && 'formula' in own ? own : undefined;
  const shows = useSignal<Statistic | 'sheet' | 'formula'>(
    own ? ('statistic' in own ? own.statistic : 'formula') : 'sheet',
  );
  const formula = useSignal(written?.formula ?? '');
  const says = useSignal(written?.says ?? '');
  const plain = useSignal(written?.plain ?? false);
  const tried = useSignal<FormulaSummary | null>(null);
  const turn = useRef(0);
  const bare = (text: string): string => text.trim().replace(/^=\s*/, '');
  useSignalEffect(() => {
    const asked = { formula: bare(formula.value), plain: plain.value };
    const mine = ++turn.current;
    if (shows.value !== 'formula' || asked.formula === '') {
      tried.value = null;
      return;
    }
    const timer = setTimeout(() => {
      const take = (answer: FormulaSummary) => {
        if (mine === turn.current) tried.value = answer;
      };
      page.service
        .triedSummary(sheet.id, column.id, asked)
        .then(take, (reason: unknown) =>
          take({ text: '', sentence: reason instanceof Error ? reason.message : String(reason) }),
        );
    }, pause);
    return () => clearTimeout(timer);
  });
  const submit = async (event: Event) => {
    event.preventDefault();
    const chosen: OwnSummary[] =
      shows.value === 'sheet'
        ? []
        : shows.value === 'formula'
          ? [
              {
                column: column.id,
                formula: bare(formula.value),
                ...(says.value.trim() ? { says: says.value.trim() } : {}),
                ...(plain.value ? { plain: true } : {}),
              },
            ]
          : [{ column: column.id, statistic: shows.value }];
    const done = await changeView(page, `Change the summary of ${column.label}`, ({ summaries, ...view }) => {
      const all = [...(summaries ?? []).filter((one) => one.column !== column.id), ...chosen];
      return all.length ? { ...view, summaries: all } : view;
    });
    if (done) close();
  };
  const isFormula = shows.value === 'formula';
  const unit = column.unit === undefined ? '' : unitSign(column.unit);
  const measured = column.kind === 'date' ? 'a date' : unit === '' ? undefined : `in ${unit}`;
  const line = statisticNames[sheet.view?.statistic ?? 'mean'];
  return (
    <Dialogue title={`Summary of ${column.label}`} close={close}>
      <form class="form" onSubmit={(event) => void submit(event)}>
        <p class="soft">The summary appears below the visible rows, and below each group.</p>
        <Field label="Shows">
          <select
            value={shows.value}
            onChange={(event) => {
              shows.value = event.currentTarget.value as Statistic | 'sheet' | 'formula';
            }}
          >
            <option value="sheet">same as the summary row ({line})</option>
            {statistics.map((one) => (
              <option key={one} value={one}>
                {statisticNames[one]}
              </option>
            ))}
            <option value="formula">a formula over the rows</option>
          </select>
        </Field>
        {isFormula && (
          <>
            <Field
              label="Formula"
              hint={`The name of a column means its values in these rows; ${sheet.name}.${column.name} means the whole column.`}
            >
              <input
                class="formula"
                spellcheck={false}
                maxLength={8192}
                placeholder={`MEDIAN(${column.name})`}
                aria-describedby="summary-tried"
                aria-invalid={tried.value?.sentence !== undefined || undefined}
                value={formula.value}
                onInput={(event) => {
                  formula.value = event.currentTarget.value;
                }}
              />
            </Field>
            <p
              id="summary-tried"
              role="status"
              class={tried.value?.sentence === undefined ? 'soft' : 'wrong-note summary-tried'}
            >
              {tried.value === null
                ? 'The value over the rows shown appears here.'
                : (tried.value.sentence ??
                  `For the visible rows: ${tried.value.text}${plain.value || unit === '' ? '' : unit === '°' ? '°' : ` ${unit}`}`)}
            </p>
            {measured !== undefined && (
              <Field label="The value is">
                <select
                  value={plain.value ? 'plain' : 'column'}
                  onChange={(event) => {
                    plain.value = event.currentTarget.value === 'plain';
                  }}
                >
                  <option value="column">{measured}, as the column is</option>
                  <option value="plain">a plain number, such as a count</option>
                </select>
              </Field>
            )}
            <Field label="Called" hint="Shown before the value.">
              <input
                maxLength={40}
                placeholder={nameOf(formula.value || `MEDIAN(${column.name})`)}
                value={says.value}
                onInput={(event) => {
                  says.value = event.currentTarget.value;
                }}
              />
            </Field>
          </>
        )}
        <Decide label="Save summary" close={close} disabled={isFormula && bare(formula.value) === ''} />
      </form>
    </Dialogue>
  );
}
