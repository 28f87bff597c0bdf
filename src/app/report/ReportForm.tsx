import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type IccForm, iccForms } from '../../../functions/statistics/icc.ts';
import type { Json } from '../../book/model.ts';
import type { SheetOutline } from '../../session/api.ts';
import { type Chosen, percentOf } from '../../session/report/chosen.ts';
import type { GroupSet, ReportSettings, TrialSet } from '../../session/report/report-settings.ts';
import { Decide, Dialogue, Field } from '../dialogues/Dialogue.tsx';
import { guarded, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say } from '../state/page.ts';
import { askReport } from './ask.ts';
import './report.css';
import { SetFields, Tick } from './SetFields.tsx';

/** What each form of the coefficient is for (Shrout & Fleiss 1979, Table 1, in our words). */
const formWords: Readonly<Record<IccForm, string>> = {
  '1,1': '1,1 · one-way, a single trial',
  '2,1': '2,1 · random trials or testers, a single trial',
  '3,1': '3,1 · fixed trials or testers, a single trial',
  '1,k': '1,k · one-way, the mean of the trials',
  '2,k': '2,k · random, the mean of the trials',
  '3,k': '3,k · fixed, the mean of the trials',
};

/** What the cohort report holds; kept in the book. */
export function ReportForm({ close }: { close: () => void }) {
  const page = usePage();
  const ready = useSignal(false);
  const kept = useSignal<ReportSettings>({});
  const chosen = useSignal<Chosen | null>(null);
  const trials = useSignal<readonly TrialSet[]>([]);
  const groups = useSignal<readonly GroupSet[]>([]);
  const charts = useSignal<ReadonlySet<string>>(new Set());
  const outline = page.outline.value;
  const sheets = outline?.sheets ?? [];
  const allCharts = outline?.charts ?? [];
  useEffect(() => {
    void guarded(page, async () => {
      const { settings, usualGroups, chosen: now } = await askReport(page);
      chosen.value = now;
      kept.value = settings;
      trials.value = settings.trials ?? [];
      groups.value = settings.groups ?? usualGroups;
      charts.value = new Set(settings.charts ?? allCharts.map(({ key }) => key));
      ready.value = true;
      return true;
    });
  }, [page]);
  const change = (part: Partial<ReportSettings>) => {
    kept.value = { ...kept.value, ...part };
  };
  const sheetOf = (wanted: string): SheetOutline | undefined =>
    sheets.find(({ id, name }) => id === wanted || name.toLowerCase() === wanted.toLowerCase());

  const keep = async (event: Event) => {
    event.preventDefault();
    const few = trials.value.find(({ columns }) => columns.length < 2);
    if (few)
      return say(
        page,
        `Reliability needs two or more columns of one measure. Tick them, or remove the set.`,
        'wrong',
      );
    const every = allCharts.every(({ key }) => charts.value.has(key));
    const value = {
      ...kept.value,
      // The form is the whole report's.
      trials: trials.value.map(({ form: _, ...set }) => set),
      form: kept.value.form ?? trials.value.find(({ form }) => form !== undefined)?.form,
      groups: groups.value.filter(({ columns }) => columns.length > 0),
      charts: every ? undefined : [...charts.value],
    };
    const plain = JSON.parse(JSON.stringify(value)) as Json;
    const words = 'Change the report contents';
    if (await run(page, { do: 'set-part', part: 'handouts', key: 'report', value: plain, words })) {
      close();
      const { openReport } = await import('./open-report.tsx');
      await openReport(page);
    }
  };
  return (
    <Dialogue title="Report contents" close={close} wide>
      <form class="form" onSubmit={(event) => void keep(event)}>
        <Field label="Title">
          <input
            maxLength={200}
            placeholder={`${outline?.title ?? ''}: cohort report`}
            value={kept.value.title ?? ''}
            onInput={(event) => change({ title: event.currentTarget.value })}
          />
        </Field>
        <Field label="Authors">
          <input
            maxLength={300}
            value={kept.value.authors ?? ''}
            onInput={(event) => change({ authors: event.currentTarget.value })}
          />
        </Field>
        <Field
          label="Participants and methods"
          hint="In your own words. The computed results and their sources are added."
        >
          <textarea
            class="report-methods"
            maxLength={10_000}
            value={kept.value.methods ?? ''}
            onInput={(event) => change({ methods: event.currentTarget.value })}
          />
        </Field>
        <h3>Reliability: repeated trials of one measure</h3>
        <Field
          label="Form of the ICC"
          hint={
            chosen.value?.formFrom
              ? `Set in the book by ${chosen.value.formFrom}; change it there. One form is used throughout.`
              : 'One form is used throughout the report.'
          }
        >
          <select
            disabled={Boolean(chosen.value?.formFrom)}
            value={kept.value.form ?? chosen.value?.form ?? '2,1'}
            onChange={(event) => change({ form: event.currentTarget.value as IccForm })}
          >
            {iccForms.map((form) => (
              <option key={form} value={form}>
                {formWords[form]}
              </option>
            ))}
          </select>
        </Field>
        {chosen.value && (
          <p class="soft">
            Confidence level: {percentOf(chosen.value)}
            {chosen.value.confidenceFrom
              ? `, set in the book by ${chosen.value.confidenceFrom}.`
              : '. To set another, name a cell confidence_level.'}
          </p>
        )}
        {trials.value.map((set, index) => (
          <SetFields
            key={index}
            name={`Trials ${index + 1}`}
            sheets={sheets}
            sheet={sheetOf(set.sheet)}
            columns={set.columns}
            change={(part) => {
              trials.value = trials.value.map((one, i) => (i === index ? { ...one, ...part } : one));
            }}
            remove={() => {
              trials.value = trials.value.filter((_, i) => i !== index);
            }}
          />
        ))}
        <button
          type="button"
          class="firm report-add"
          disabled={!ready.value || sheets.length === 0}
          onClick={() => {
            trials.value = [...trials.value, { sheet: sheets[0]!.name, columns: [] }];
          }}
        >
          Add a measure with trials
        </button>
        <h3>Descriptive statistics</h3>
        {groups.value.map((set, index) => {
          const sheet = sheetOf(set.sheet);
          return (
            <SetFields
              key={index}
              name={`Groups ${index + 1}`}
              sheets={sheets}
              sheet={sheet}
              columns={set.columns}
              change={(part) => {
                groups.value = groups.value.map((one, i) => (i === index ? { ...one, ...part } : one));
              }}
              remove={() => {
                groups.value = groups.value.filter((_, i) => i !== index);
              }}
            >
              <label>
                By{' '}
                <select
                  value={set.by ?? ''}
                  onChange={(event) => {
                    const { by: _, ...rest } = set;
                    const by = event.currentTarget.value;
                    const next = by === '' ? rest : { ...rest, by };
                    groups.value = groups.value.map((one, i) => (i === index ? next : one));
                  }}
                >
                  <option value="">All rows</option>
                  {sheet?.columns
                    .filter(({ kind }) => kind === 'text' || kind === 'choice' || kind === 'yes-no')
                    .map(({ name, label }) => (
                      <option key={name} value={name}>
                        {label}
                      </option>
                    ))}
                </select>
              </label>
            </SetFields>
          );
        })}
        <button
          type="button"
          class="firm report-add"
          disabled={!ready.value || sheets.length === 0}
          onClick={() => {
            groups.value = [...groups.value, { sheet: sheets[0]!.name, columns: [] }];
          }}
        >
          Add a sheet to describe
        </button>
        {allCharts.length > 0 && (
          <fieldset class="report-ticks">
            <legend>Figures</legend>
            {allCharts.map(({ key, title }) => (
              <Tick
                key={key}
                label={title}
                on={charts.value.has(key)}
                turn={(on) => {
                  const next = new Set(charts.value);
                  if (on) next.add(key);
                  else next.delete(key);
                  charts.value = next;
                }}
              />
            ))}
          </fieldset>
        )}
        <Decide label="Save and show the report" close={close} disabled={!ready.value} />
      </form>
    </Dialogue>
  );
}
