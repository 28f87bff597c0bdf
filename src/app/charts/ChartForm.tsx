import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Json } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { SheetOutline } from '../../session/api.ts';
import { type ChartKind, chartKinds, chartRoles } from '../../session/charts/chart-record.ts';
import { Decide, Dialogue, Field } from '../dialogues/Dialogue.tsx';
import { guarded, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say } from '../state/page.ts';

/** A chart in three choices: what kind, of what, by whom. The rest is as usual until it is changed. */
export function ChartForm({ chart, close }: { chart: string | null; close: () => void }) {
  const page = usePage();
  const sheet = useSignal(page.sheet.peek()?.id ?? '');
  const kind = useSignal<ChartKind>('scatter');
  const columns = useSignal<readonly string[]>([]);
  const by = useSignal('');
  const panels = useSignal(false);
  const title = useSignal('');
  const sem = useSignal('');
  const gap = useSignal('');
  const confidence = useSignal('');
  useEffect(() => {
    if (chart === null) return;
    void guarded(page, async () => {
      const { record } = await page.service.chart(chart);
      sheet.value = record.sheet;
      kind.value = record.kind;
      columns.value = record.columns;
      by.value = record.by ?? '';
      panels.value = record.panels ?? false;
      title.value = record.title;
      sem.value = record.sem === undefined ? '' : String(record.sem);
      gap.value = record.gapDays === undefined ? '' : String(record.gapDays);
      confidence.value = record.confidence === undefined ? '' : String(record.confidence * 100);
      return true;
    });
  }, [chart, page]);

  const sheets = page.outline.value?.sheets ?? [];
  const of = sheets.find(({ id }) => id === sheet.value) ?? sheets[0];
  const { about, roles, labels, by: byWhom, usual = [] } = chartRoles[kind.value];
  const offered = roles.map((role) => of?.columns.filter((column) => column.kind === role) ?? []);
  const picked = roles.map((_, index) => {
    const own = columns.value[index];
    const list = offered[index]!;
    const role = usual[index];
    const likely = role !== undefined && of ? columnInRole(of, role)?.name : undefined;
    return list.some(({ name }) => name === own)
      ? own!
      : list.some(({ name }) => name === likely)
        ? likely!
        : (list[Math.min(index, list.length - 1)]?.name ?? '');
  });
  const grouping = of?.columns.filter((column) => ['text', 'choice', 'yes-no'].includes(column.kind)) ?? [];
  const usesError = ['pairs', 'sides', 'trend'].includes(kind.value);
  const usesConfidence = usesError || kind.value === 'agreement' || kind.value === 'repetitions';
  const canPanel = kind.value !== 'distribution' && kind.value !== 'load' && by.value !== '';

  const keep = async (event: Event) => {
    event.preventDefault();
    const error = usesError ? errorFrom(sem.value) : undefined;
    const days = kind.value === 'trend' ? numberFrom(gap.value) : undefined;
    const percent = usesConfidence ? numberFrom(confidence.value) : undefined;
    if (typeof error === 'number' && error < 0)
      return say(page, `"${sem.value}" is not a standard error. Enter 0 or more.`, 'wrong');
    if (days !== undefined && !(days >= 1 && days <= 3660))
      return say(
        page,
        `"${gap.value}" is not a number of days. Enter 1 to 3660, or leave it blank.`,
        'wrong',
      );
    if (percent !== undefined && !(percent >= 50 && percent <= 99.9))
      return say(
        page,
        `"${confidence.value}" is not a confidence level. Enter a percentage from 50 to 99.9.`,
        'wrong',
      );
    const key = chart ?? freeKey(page.outline.value?.charts.map((known) => known.key) ?? []);
    const value = {
      title: title.value.trim() || titleFor(of, picked, kind.value),
      kind: kind.value,
      sheet: of?.id ?? '',
      columns: picked,
      by: grouping.some(({ name }) => name === by.value) ? by.value : undefined,
      panels: canPanel && panels.value ? true : undefined,
      sem: error,
      confidence: percent === undefined ? undefined : Number((percent / 100).toFixed(4)),
      gapDays: days,
    };
    const words = chart === null ? 'Add a chart' : 'Change a chart';
    const plain = JSON.parse(JSON.stringify(value)) as Json;
    if (await run(page, { do: 'set-part', part: 'charts', key, value: plain, words })) {
      page.chart.value = key;
      close();
    }
  };

  return (
    <Dialogue title={chart === null ? 'New chart' : 'Change the chart'} close={close}>
      <form class="form" onSubmit={(event) => void keep(event)}>
        <Field label="Chart type" hint={about}>
          <select
            value={kind.value}
            onChange={(event) => {
              kind.value = event.currentTarget.value as ChartKind;
              columns.value = [];
              if (chartRoles[kind.value].by === 'Athlete' && of)
                by.value = columnInRole(of, 'athlete')?.name ?? by.value;
            }}
          >
            {chartKinds.map((one) => (
              <option key={one} value={one}>
                {chartRoles[one].name}
              </option>
            ))}
          </select>
        </Field>
        <Field label="Sheet">
          <select
            value={of?.id ?? ''}
            onChange={(event) => {
              sheet.value = event.currentTarget.value;
            }}
          >
            {sheets.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </Field>
        {roles.map((role, index) => (
          <Field
            key={labels[index]}
            label={labels[index]!}
            hint={offered[index]!.length === 0 ? `This sheet has no ${role} column.` : undefined}
          >
            <select
              value={picked[index]}
              onChange={(event) => {
                columns.value = picked.map((name, i) => (i === index ? event.currentTarget.value : name));
              }}
            >
              {offered[index]!.map(({ name, label }) => (
                <option key={name} value={name}>
                  {label}
                </option>
              ))}
            </select>
          </Field>
        ))}
        <Field label={byWhom}>
          <select
            value={by.value}
            onChange={(event) => {
              by.value = event.currentTarget.value;
            }}
          >
            <option value="">All in one chart</option>
            {grouping.map(({ name, label }) => (
              <option key={name} value={name}>
                {label}
              </option>
            ))}
          </select>
        </Field>
        {canPanel && (
          <label class="tick">
            <input
              type="checkbox"
              checked={panels.value}
              onChange={(event) => {
                panels.value = event.currentTarget.checked;
              }}
            />{' '}
            One small chart for each
          </label>
        )}
        {usesError && (
          <Field
            label="Standard error of measurement"
            hint={
              kind.value === 'pairs'
                ? 'A number in the unit of the columns, or a formula. Left blank, these pairs give the value.'
                : 'A number in the unit of the column, or a formula such as TEST.SEM.TRIALS(retest.first_test, retest.second_test); left blank, no band is drawn.'
            }
          >
            <input
              class="formula"
              spellcheck={false}
              maxLength={2000}
              value={sem.value}
              onInput={(event) => {
                sem.value = event.currentTarget.value;
              }}
            />
          </Field>
        )}
        {kind.value === 'trend' && (
          <Field label="Longest gap to draw a line across, days" hint="Left blank, 28.">
            <input
              inputMode="numeric"
              value={gap.value}
              onInput={(event) => {
                gap.value = event.currentTarget.value;
              }}
            />
          </Field>
        )}
        {usesConfidence && (
          <Field label="Confidence, %" hint="Left blank, 95.">
            <input
              inputMode="decimal"
              value={confidence.value}
              onInput={(event) => {
                confidence.value = event.currentTarget.value;
              }}
            />
          </Field>
        )}
        <Field label="Title">
          <input
            maxLength={200}
            placeholder={titleFor(of, picked, kind.value)}
            value={title.value}
            onInput={(event) => {
              title.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Decide
          label={chart === null ? 'Create chart' : 'Save changes'}
          close={close}
          disabled={picked.some((name) => name === '')}
        />
      </form>
    </Dialogue>
  );
}

function titleFor(sheet: SheetOutline | undefined, columns: readonly string[], kind: ChartKind): string {
  const labels = columns.map((name) => sheet?.columns.find((column) => column.name === name)?.label ?? name);
  const [first = '', second = first] = labels;
  switch (kind) {
    case 'scatter':
      return `${second} against ${first}`;
    case 'agreement':
      return `Agreement: ${first} and ${second}`;
    case 'pairs':
      return `${first} to ${second}`;
    case 'sides':
      return `${first}, ${second}`;
    case 'trend':
      return `${second} over time`;
    case 'distribution':
      return first;
    case 'lean-parts':
      return `Where ${first.toLowerCase()} comes from`;
    case 'load':
      return `${second} by week`;
    case 'bar-path':
      return 'Bar path over mid-foot';
    case 'repetitions':
      return `${second} over repetitions`;
  }
}

/** A typed number, a comma counting as a point; undefined for nothing, NaN for a text. */
const numberFrom = (text: string): number | undefined =>
  text.trim() === '' ? undefined : Number(text.trim().replace(',', '.'));

/** A number stays a number, everything else is taken for a formula; undefined for nothing. */
function errorFrom(text: string): number | string | undefined {
  const number = numberFrom(text);
  return number === undefined || !Number.isNaN(number) ? number : text.trim().replace(/^=/, '');
}

function freeKey(taken: readonly string[]): string {
  for (let n = 1; ; n++) if (!taken.includes(`chart-${n}`)) return `chart-${n}`;
}
