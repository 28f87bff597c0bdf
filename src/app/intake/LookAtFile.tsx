/** A file before it is imported: what was found, and what is to be decided. */
import type { ComponentChildren } from 'preact';
import type { FileReading } from '../../session/imports/file-reading.ts';
import { Field } from '../dialogues/Dialogue.tsx';
import { usePage } from '../state/context.ts';
import { Columns } from './Columns.tsx';
import { Differing } from './Differing.tsx';
import { FileAsAWhole } from './FileAsAWhole.tsx';
import type { FileImport } from './file-import.ts';
import { Changes, HeldList, Rows } from './ImportPreview.tsx';
import { countsOf, importInWords, isAnythingDoubtful, isMuchUnreadable, verdictOf } from './import-words.ts';
import { Questions } from './Questions.tsx';
import { Select } from './Select.tsx';
import { UnreadableCells } from './UnreadableCells.tsx';
import { Replaced, WhichSheet } from './WhichSheet.tsx';
import { WhoIsWho } from './WhoIsWho.tsx';

interface Props {
  readonly state: FileImport;
  readonly reading: FileReading;
  readonly close: () => void;
}

/** The second step: what the file holds, what would become of it, and everything that can be decided about it. */
export function LookAtFile({ state, reading, close }: Props) {
  const { busy, waiting } = state;
  const { columns, findings, preview, recipe, heldRows, rows, who, changes, differing } = reading;
  const shown = new Set(columns.flatMap(({ notes }) => notes));
  const notes = reading.notes.filter((one) => !shown.has(one));
  const asked =
    reading.fits.length > 0 ||
    reading.replacing !== null ||
    reading.questions.length > 0 ||
    differing?.decided === null;
  const page = usePage();
  const sheetRows = page.outline.value?.sheets.find(({ id }) => id === reading.sheet.id)?.rows ?? 0;
  const keyed = reading.mode !== 'update' || reading.key.length > 0;
  const take = (event: Event) => {
    event.preventDefault();
    if (!asked && !busy.value) void state.importFile();
  };
  return (
    <form class="form" onSubmit={take} aria-busy={busy.value}>
      <p class="intake-verdict" role="status">
        <strong>{verdictOf(reading)}</strong>
      </p>
      <p class="intake-counts soft">{countsOf(reading, false)}</p>
      <Where state={state} reading={reading} />
      {recipe !== null && (
        <div class="intake-recipe">
          <p>
            Read like the file before it, by the import settings <strong>{recipe}</strong>.
          </p>
          <button type="button" class="firm" onClick={() => state.decide({ recipe: null })}>
            Use other settings
          </button>
        </div>
      )}
      {reading.like !== null && (
        <p class="soft">
          Units, marks and date order are those of the same exporter’s file before:{' '}
          <strong>{reading.like}</strong>.
        </p>
      )}
      <WhichSheet state={state} fits={reading.fits} />
      {reading.fits.length === 0 && reading.replacing && (
        <Replaced state={state} sheet={reading.sheet.label} replacing={reading.replacing} />
      )}
      <Questions state={state} reading={reading} />
      {differing && <Differing state={state} sheet={reading.sheet.label} differing={differing} />}
      {who && (who.close.length > 0 || who.unknown.length > 0 || who.same.length > 0) && (
        <Part
          title={whoTitle(who)}
          open={who.close.length + who.unknown.length > 0 || state.decisions.value.who !== undefined}
        >
          <WhoIsWho state={state} who={who} />
        </Part>
      )}
      {changes.length > 0 && (
        <Part title="What would change in the sheet" open>
          <Changes changes={changes} />
        </Part>
      )}
      {heldRows.length > 0 && (
        <Part title={`Rows not imported: ${rows.held}`}>
          <p class="soft">The import history saves them as they came; they can be fixed later.</p>
          <HeldList rows={heldRows} />
        </Part>
      )}
      <UnreadableCells state={state} reading={reading} />
      {preview.doubtful.length > 0 && (
        <Part title={`Rows to check: ${preview.doubtful.length}`}>
          <Rows columns={preview.columns} rows={preview.doubtful} label="Rows to check" />
        </Part>
      )}
      <Part title={`Columns: ${columns.length}`}>
        <Columns state={state} reading={reading} />
      </Part>
      <Part title="First rows, as they would appear">
        <Rows columns={preview.columns} rows={preview.first} label="First rows" />
      </Part>
      <Part title="How the file is read" open={isAnythingDoubtful(findings) || isMuchUnreadable(reading)}>
        <FileAsAWhole state={state} reading={reading} />
      </Part>
      {notes.length > 0 && (
        <Part title={`Also noted: ${notes.length}`}>
          <ul class="intake-notes">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Part>
      )}
      <footer class="decide intake-decide">
        <p role="status">
          {asked
            ? 'Answer the question above to import.'
            : keyed
              ? ''
              : 'Select the column by which rows are recognised.'}
        </p>
        {waiting.value.length > 0 && (
          <button type="button" class="firm" onClick={() => state.next()}>
            Skip this file
          </button>
        )}
        <button type="button" class="firm" onClick={close}>
          Cancel
        </button>
        <button type="submit" class="strong" disabled={busy.value || asked || !keyed}>
          {asked ? 'Import' : importInWords(reading, sheetRows)}
        </button>
      </footer>
    </form>
  );
}

const whoTitle = ({ roster, close, unknown, same }: NonNullable<FileReading['who']>): string => {
  const open = close.length + unknown.length;
  return `Who is who in ${roster}: ${open > 0 ? `${open} to answer` : `${same.length} recognised`}`;
};

function Part({
  title,
  open = false,
  children,
}: {
  title: string;
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <details class="intake-part" open={open}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}

const modes = [
  ['append', 'Add new rows; those already there stay as they are'],
  ['update', 'Update rows by a column, add the others'],
  ['replace', 'Replace all rows of the sheet'],
] as const;

/** Which sheet, and what becomes of the rows there. */
function Where({ state, reading }: { state: FileImport; reading: FileReading }) {
  const page = usePage();
  const sheets = page.outline.value?.sheets ?? [];
  const { sheet, tables, key, columns, differing } = reading;
  // The answer to what differs may make an update of it; what was asked for is to add rows.
  const mode = differing ? 'append' : reading.mode;
  const rows = sheets.find(({ id }) => id === sheet.id)?.rows ?? 0;
  const wanted = state.decisions.value.mode ?? mode;
  return (
    <div class="intake-where">
      {tables && tables.tables.length > 1 && (
        <Field label="Table of the workbook">
          <Select
            label="Table of the workbook"
            value={tables.table}
            options={tables.tables.map((one) => [one, one] as const)}
            change={(table) => state.decide({ table })}
          />
        </Field>
      )}
      <Field label="Into">
        <Select
          label="Into"
          value={sheet.id ?? ''}
          options={[
            ['', `a new sheet${sheet.id === null ? `: ${sheet.label}` : ''}`],
            ...sheets.map(({ id, label }) => [id, label] as const),
          ]}
          change={(id) => state.decideSheet(id || null)}
        />
      </Field>
      {rows > 0 && (
        <Field label="Rows">
          <Select
            label="Rows"
            value={wanted}
            options={modes}
            change={(value) => {
              const chosen = value as FileReading['mode'];
              // Updating needs a key: the first column that can tell rows apart is proposed.
              const first = columns.find(({ column, filled }) => column !== null && filled > 0)?.column;
              state.decide({
                mode: chosen,
                ...(chosen === 'update' && key.length === 0 && first ? { key: [first] } : {}),
              });
            }}
          />
        </Field>
      )}
      {wanted === 'update' && (
        <fieldset class="intake-keys">
          <legend>Rows are the same where these are the same</legend>
          {columns
            .filter(({ column, isNew }) => column !== null && !isNew)
            .map(({ column, label }) => {
              const keys = state.decisions.value.key ?? key;
              return (
                <label key={column} class="check">
                  <input
                    type="checkbox"
                    checked={keys.includes(column!)}
                    onChange={(event) => {
                      const next = event.currentTarget.checked
                        ? [...keys, column!]
                        : keys.filter((one) => one !== column);
                      if (next.length > 0) state.decide({ key: next });
                      else event.currentTarget.checked = true;
                    }}
                  />
                  {label}
                </label>
              );
            })}
        </fieldset>
      )}
    </div>
  );
}
