/** The columns of a file that is to be imported: where each goes and how it is read. */
import type { FileColumn, FileReading } from '../../session/imports/file-reading.ts';
import type { Dimension } from '../../units/dimension.ts';
import { dimensions } from '../../units/dimension.ts';
import { unitsOf } from '../../units/unit.ts';
import { usePage } from '../state/context.ts';
import type { FileImport } from './file-import.ts';
import { clocks, dateOrders, decimalMarks, kinds, withFound } from './import-words.ts';
import { Scrolled } from './Scrolled.tsx';
import { Select } from './Select.tsx';

const asNew = 'new column';
const leftOut = 'left out';

interface Props {
  readonly state: FileImport;
  readonly reading: FileReading;
}

/** Every column of the file: where it goes, how its cells are read, and what says so. */
export function Columns({ state, reading }: Props) {
  const { columns, recipe } = reading;
  return (
    <Scrolled label="Columns of the file">
      <table class="intake-columns">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">Goes to</th>
            <th scope="col">Read as</th>
            <th scope="col">Evidence</th>
            <th scope="col">Cells</th>
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => (
            <tr key={column.index} class={column.column === null ? 'out' : undefined}>
              <th scope="row">
                {column.heading}
                <span class="soft intake-examples">{column.examples.slice(0, 2).join(' · ')}</span>
              </th>
              <td>
                {recipe === null ? (
                  <Goes state={state} reading={reading} column={column} />
                ) : (
                  (column.label ?? leftOut)
                )}
              </td>
              <td>
                {column.column !== null &&
                  (recipe === null ? (
                    <ReadAs state={state} column={column} />
                  ) : (
                    [column.kind.value, column.unit].filter(Boolean).join(', ')
                  ))}
              </td>
              <td class="intake-evidence">
                {column.column !== null ? (
                  <Evidence column={column} />
                ) : (
                  column.notes.map((note) => (
                    <span key={note} class="intake-note">
                      {note}
                    </span>
                  ))
                )}
              </td>
              <td class="intake-cells">
                {column.filled} filled
                {column.held > 0 && <strong> {column.held} unreadable</strong>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}

function Goes({ state, reading, column }: Props & { column: FileColumn }) {
  const page = usePage();
  const sheet = page.outline.value?.sheets.find(({ id }) => id === reading.sheet.id);
  const value = column.column === null ? leftOut : column.isNew ? asNew : column.column;
  const options = [
    [asNew, 'a new column'],
    [leftOut, leftOut],
    ...(sheet?.columns ?? []).map(
      ({ name, label, formula }) =>
        [name, formula === undefined ? label : `${label} (over its formula)`] as const,
    ),
  ] as const;
  return (
    <Select
      label={`Where ${column.heading} goes`}
      value={value}
      options={options}
      change={(name) => {
        // An empty name feeds no column that is there, and so a new one.
        const feeds = name === leftOut ? null : name === asNew ? '' : name;
        state.decideColumn(column.index, { feeds });
      }}
    />
  );
}

/** Kind, unit and factor, marks: each can be changed, and the preview follows. */
function ReadAs({ state, column }: { state: FileImport; column: FileColumn }) {
  const { heading, index, isNew, kind, written, fixed } = column;
  const decide = (change: Parameters<FileImport['decideColumn']>[1]) => state.decideColumn(index, change);
  const factor = state.decisions.value.choices?.columns?.[index]?.factor ?? 1;
  return (
    <div class="intake-read">
      {isNew ? (
        <Select
          label={`Kind of ${heading}`}
          value={kind.value}
          options={withFound(kinds, kind.value)}
          change={(value) => decide({ kind: value as 'number' })}
        />
      ) : (
        <span>{kind.value}</span>
      )}
      {kind.value === 'number' && (
        <>
          {(isNew || fixed !== null) && (
            <Select
              label={`Unit of ${heading}`}
              value={written.value ?? column.unit ?? ''}
              options={withFound(unitOptions(fixed), written.value ?? column.unit ?? '')}
              change={(unit) => decide({ unit: unit || null })}
            />
          )}
          <label class="intake-factor">
            ×
            <input
              type="number"
              step="any"
              min="0"
              aria-label={`Factor of ${heading}`}
              title="Cells are multiplied by it first: 0.1 for tenths"
              value={factor}
              onChange={(event) => {
                const value = Number(event.currentTarget.value);
                if (value > 0) decide({ factor: value });
                else event.currentTarget.value = String(factor);
              }}
            />
          </label>
          <Select
            label={`Decimal mark of ${heading}`}
            value={column.decimal.value}
            options={decimalMarks}
            change={(value) => decide({ decimal: value as '.' })}
          />
        </>
      )}
      {column.dateOrder && kind.value === 'date' && (
        <Select
          label={`Date order of ${heading}`}
          value={column.dateOrder.value}
          options={dateOrders}
          change={(value) => decide({ dateOrder: value as 'dmy' })}
        />
      )}
      {column.clock && (
        <Select
          label={`Times of ${heading}`}
          value={column.clock.value}
          options={clocks}
          change={(value) => decide({ clock: value as 'h:mm' })}
        />
      )}
    </div>
  );
}

/** Units to choose from: those of the column's dimension, or all. */
function unitOptions(fixed: Dimension | null): readonly (readonly [string, string])[] {
  const all = fixed ? [fixed] : (Object.keys(dimensions) as Dimension[]);
  return [
    ['', fixed ? dimensions[fixed] : 'no unit'],
    ...all.flatMap((dimension) =>
      unitsOf(dimension)
        .filter(({ unit }) => !fixed || unit !== dimensions[fixed])
        .map(({ unit, name }) => [unit, unit === name ? unit : `${unit} (${name})`] as const),
    ),
  ];
}

function Evidence({ column }: { column: FileColumn }) {
  const { kind, written, decimal, dateOrder, clock, notes } = column;
  const number = kind.value === 'number';
  const said = [
    kind.because,
    ...(number && written.value !== null ? [written.because] : []),
    ...(number && decimal.value === ',' ? [decimal.because] : []),
    ...(dateOrder ? [dateOrder.because] : []),
    ...(clock ? [clock.because] : []),
  ];
  return (
    <>
      {[...new Set(said)].join(' ')}
      {notes.map((note) => (
        <span key={note} class="intake-note">
          {note}
        </span>
      ))}
    </>
  );
}
