import { useSignal } from '@preact/signals';
import type { FileReport } from '../../worker/protocol.ts';
import { usePage } from '../shell/context.ts';
import { guarded } from '../state/actions.ts';
import { settle } from '../state/page.ts';
import { Dialogue, Field } from './Dialogue.tsx';

/** Brings a table file into a sheet: what was found is shown first, nothing is written before it is taken. */
export function BringInForm({ close }: { close: () => void }) {
  const page = usePage();
  const sheets = page.outline.value?.sheets ?? [];
  const target = useSignal('');
  const file = useSignal<File | null>(null);
  const report = useSignal<FileReport | null>(null);
  const problem = useSignal<string | null>(null);
  const reading = useSignal(false);
  const read = async () => {
    const { value } = file;
    report.value = null;
    problem.value = null;
    if (!value) return;
    reading.value = true;
    try {
      const bytes = new Uint8Array(await value.arrayBuffer());
      const answer = await page.service.readFile(bytes, value.name, target.value || null);
      if (answer.ok) report.value = answer.report;
      else problem.value = answer.sentence;
    } catch (reason) {
      problem.value = reason instanceof Error ? reason.message : String(reason);
    } finally {
      reading.value = false;
    }
  };
  const take = async (event: Event) => {
    event.preventDefault();
    const before = new Set(sheets.map(({ id }) => id));
    const done = await guarded(page, async () => settle(page, await page.service.bringIn()));
    if (!done) return;
    const made = page.outline.value?.sheets.find(({ id }) => !before.has(id));
    page.sheetId.value = made?.id ?? (target.value || page.sheetId.value);
    close();
  };
  return (
    <Dialogue title="Bring in a file" close={close} wide>
      <form class="form" onSubmit={(event) => void take(event)}>
        <Field label="File" hint="CSV or other separated text, XLSX or ODS.">
          <input
            type="file"
            accept=".csv,.tsv,.txt,.xlsx,.ods,text/csv"
            onChange={(event) => {
              file.value = event.currentTarget.files?.[0] ?? null;
              void read();
            }}
          />
        </Field>
        <Field label="Into">
          <select
            value={target.value}
            onChange={(event) => {
              target.value = event.currentTarget.value;
              void read();
            }}
          >
            <option value="">a new sheet</option>
            {sheets.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </Field>
        <div role="status">
          {reading.value && <p class="soft">Reading…</p>}
          {problem.value && <p class="panel-note wrong-note">{problem.value}</p>}
        </div>
        {report.value && <Found report={report.value} />}
        <footer class="decide">
          <button type="button" class="firm" onClick={close}>
            Cancel
          </button>
          <button type="submit" class="strong" disabled={!report.value}>
            {report.value ? `Bring in ${report.value.rows.placed} rows` : 'Bring in'}
          </button>
        </footer>
      </form>
    </Dialogue>
  );
}

function Found({ report: { rows, held, columns, notes } }: { report: FileReport }) {
  return (
    <div class="found">
      <p>
        <strong>{rows.in} rows</strong> read: {rows.added} new, {rows.updated} updated, {rows.unchanged} there
        already{rows.held > 0 && `, ${rows.held} held back`}
        {held > 0 && `; ${held} cells do not fit their column and will be held as they came`}.
      </p>
      {notes.length > 0 && (
        <ul class="found-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <div class="found-table">
        <table>
          <thead>
            <tr>
              <th scope="col">Heading in the file</th>
              <th scope="col">Column</th>
              <th scope="col">Kind</th>
              <th scope="col">Filled</th>
              <th scope="col">Held</th>
            </tr>
          </thead>
          <tbody>
            {columns.map((column) => (
              <tr key={column.heading}>
                <th scope="row">{column.heading || 'without a heading'}</th>
                <td>
                  {column.column === null ? (
                    <span class="soft">left out</span>
                  ) : (
                    <>
                      {column.column} {column.isNew && <span class="soft">new</span>}
                    </>
                  )}
                  {column.notes.map((note) => (
                    <span key={note} class="found-note">
                      {note}
                    </span>
                  ))}
                </td>
                <td>{[column.kind, column.unit].filter(Boolean).join(', ')}</td>
                <td>{column.filled}</td>
                <td>{column.held || ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
