/** The fields of what is drawn in the cells of a column: bars, scales and trends. */
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import type { MarksDraft } from '../../session/marks/draft.ts';
import type { TriedMarks } from '../../session/marks/tried-marks.ts';
import { unitSign } from '../../units/sign.ts';
import { Field } from '../dialogues/Dialogue.tsx';

interface Props {
  readonly sheet: SheetOutline;
  readonly sheets: readonly SheetOutline[];
  readonly column: ColumnOutline;
  readonly draft: MarksDraft;
  readonly tried: TriedMarks | null;
  readonly names: string;
  readonly change: (part: Partial<MarksDraft>) => void;
}
type Log = Extract<NonNullable<MarksDraft['trend']>, { is: 'log' }>;

/** What is drawn into every cell of the column: a bar on a scale, and a small line. */
export function DrawnFields(props: Props) {
  const { column } = props;
  return (
    <>
      {(column.kind === 'number' || column.kind === 'date') && <ScaleFields {...props} />}
      <TrendFields {...props} />
    </>
  );
}

function ScaleFields({ column, draft: { scale }, tried, names, change }: Props) {
  const end = (part: 'from' | 'to', label: string, otherwise: string) => (
    <label class="mark-end">
      {label}
      <input
        list={names}
        placeholder={otherwise}
        spellcheck={false}
        value={scale?.[part] ?? ''}
        onInput={(event) => change({ scale: { ...scale, [part]: event.currentTarget.value } })}
      />
    </label>
  );
  const told = tried?.scale;
  return (
    <fieldset class="mark-drawn">
      <legend>Bar on a scale</legend>
      <label class="check">
        <input
          type="checkbox"
          checked={scale !== undefined}
          onChange={(event) => change({ scale: event.currentTarget.checked ? {} : undefined })}
        />
        Show where each value lies between two limits
      </label>
      {scale && (
        <>
          <div class="mark-line">
            {end('from', 'from', 'the minimum')}
            {end('to', 'to', 'the maximum')}
            {column.unit && <span class="soft">{unitSign(column.unit)}</span>}
          </div>
          <p class={typeof told === 'object' ? 'mark-note wrong' : 'mark-note'}>
            {typeof told === 'object' ? told.sentence : told ? `The scale runs ${told}.` : '…'}
          </p>
        </>
      )}
    </fieldset>
  );
}

function TrendFields({ sheet, sheets, draft: { trend }, tried, change }: Props) {
  const numbers = sheet.columns.filter(({ kind }) => kind === 'number');
  const logs = sheets.filter(({ columns }) =>
    ['date', 'number'].every((kind) => columns.some((c) => c.kind === kind)),
  );
  const choose = (is: string) => {
    const log = logs.find(({ id }) => id !== sheet.id) ?? logs[0];
    change({
      trend: is === 'columns' ? { is, columns: [] } : is === 'log' && log ? logOf(log, sheet) : undefined,
    });
  };
  const told = tried?.trend;
  return (
    <fieldset class="mark-drawn">
      <legend>Small line</legend>
      <Field label="A line in each cell">
        <select value={trend?.is ?? ''} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">none</option>
          <option value="columns" disabled={numbers.length < 2}>
            through columns of the row
          </option>
          <option value="log" disabled={logs.length === 0}>
            through a log, by date
          </option>
        </select>
      </Field>
      {trend?.is === 'columns' && (
        <fieldset class="value-list mark-columns">
          <legend class="unseen">Columns for the line, in sheet order</legend>
          {numbers.map(({ id, label }) => (
            <label key={id} class="check">
              <input
                type="checkbox"
                checked={trend.columns.includes(id)}
                onChange={(event) => {
                  const chosen = new Set(trend.columns);
                  if (event.currentTarget.checked) chosen.add(id);
                  else chosen.delete(id);
                  const columns = sheet.columns.map((one) => one.id).filter((one) => chosen.has(one));
                  change({ trend: { ...trend, columns } });
                }}
              />
              <span class="value-text">{label}</span>
            </label>
          ))}
        </fieldset>
      )}
      {trend?.is === 'log' && (
        <LogFields sheet={sheet} logs={logs} trend={trend} change={(log) => change({ trend: log })} />
      )}
      {trend && (
        <>
          <label class="check">
            <input
              type="checkbox"
              checked={trend.together ?? false}
              onChange={(event) =>
                change({ trend: { ...trend, together: event.currentTarget.checked || undefined } })
              }
            />
            Same scale in all rows
          </label>
          <p class={typeof told === 'object' ? 'mark-note wrong' : 'mark-note'}>
            {typeof told === 'object'
              ? told.sentence
              : told === undefined
                ? '…'
                : `${told} of ${tried?.rows ?? 0} rows have two or more values and show a line.`}
          </p>
        </>
      )}
    </fieldset>
  );
}

const firstOf = (sheet: SheetOutline, kind: ColumnOutline['kind']): string =>
  sheet.columns.find((one) => one.kind === kind)?.id ?? '';
const textOf = (sheet: SheetOutline): string =>
  firstOf(sheet, 'text') || firstOf(sheet, 'choice') || (sheet.columns[0]?.id ?? '');
const logOf = (log: SheetOutline, home: SheetOutline): Log => ({
  is: 'log',
  sheet: log.id,
  dates: firstOf(log, 'date'),
  values: firstOf(log, 'number'),
  who: textOf(log),
  by: textOf(home),
  last: 20,
});

function LogFields({
  sheet,
  logs,
  trend,
  change,
}: {
  sheet: SheetOutline;
  logs: readonly SheetOutline[];
  trend: Log;
  change: (trend: Log) => void;
}) {
  const log = logs.find(({ id }) => id === trend.sheet);
  const pick = (
    label: string,
    part: 'dates' | 'values' | 'who' | 'by',
    columns: readonly ColumnOutline[],
  ) => (
    <Field label={label}>
      <select
        value={trend[part]}
        onChange={(event) => change({ ...trend, [part]: event.currentTarget.value })}
      >
        {columns.map((one) => (
          <option key={one.id} value={one.id}>
            {one.label}
          </option>
        ))}
      </select>
    </Field>
  );
  const of = (...kinds: readonly ColumnOutline['kind'][]) =>
    log?.columns.filter(({ kind }) => kinds.includes(kind)) ?? [];
  return (
    <>
      <Field label="Log">
        <select
          value={trend.sheet}
          onChange={(event) => {
            const next = logs.find(({ id }) => id === event.currentTarget.value);
            if (next) change({ ...logOf(next, sheet), last: trend.last, by: trend.by });
          }}
        >
          {logs.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </Field>
      {pick('Values', 'values', of('number'))}
      {pick('Dates', 'dates', of('date'))}
      {pick('Whose, in the log', 'who', of('text', 'choice', 'number'))}
      {pick('is, in this sheet,', 'by', sheet.columns)}
      <Field label="Newest values shown">
        <input
          type="number"
          min="2"
          max="200"
          value={trend.last}
          onChange={(event) => {
            const last = Math.round(Number(event.currentTarget.value));
            change({ ...trend, last: Math.max(2, Math.min(200, last || 20)) });
          }}
        />
      </Field>
    </>
  );
}
