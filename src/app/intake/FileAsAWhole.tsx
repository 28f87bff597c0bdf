/** How a file as a whole is read: encoding, marks, heading and shape. */
import type { ComponentChildren } from 'preact';
import type { Shape } from '../../intake/index.ts';
import type { FileReading } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { delimiters, encodings, quotes, withFound } from './import-words.ts';
import { Select } from './Select.tsx';

const counts = (to: number, found: number): readonly (readonly [string, string])[] =>
  Array.from(
    { length: Math.max(to, found) + 1 },
    (_, n) => [String(n), n === 0 ? 'none' : String(n)] as const,
  );

const yesNo = [
  ['yes', 'yes'],
  ['no', 'no'],
] as const;
const shortRows = [
  ['hold', 'not imported, they may be damaged'],
  ['place', 'imported, the rest blank'],
] as const;

/** How the file as a whole is read: each finding with its evidence, and another choice. */
export function FileAsAWhole({ state, reading }: { state: FileImport; reading: FileReading }) {
  const { findings: f, tables } = reading;
  return (
    <dl class="intake-findings">
      {!tables && (
        <>
          <Row label="Encoding" because={f.encoding.because} doubtful={f.encoding.doubtful}>
            <Select
              label="Encoding"
              value={f.encoding.value}
              options={withFound(encodings, f.encoding.value)}
              change={(encoding) => state.decideFile({ encoding })}
            />
          </Row>
          <Row label="Cells are split at" because={f.delimiter.because} doubtful={f.delimiter.doubtful}>
            <Select
              label="Cells are split at"
              value={f.delimiter.value}
              options={delimiters}
              change={(value) => state.decideFile({ delimiter: value as ',' })}
            />
          </Row>
          <Row label="Quotes" because={f.quote.because} doubtful={f.quote.doubtful}>
            <Select
              label="Quotes"
              value={f.quote.value}
              options={quotes}
              change={(value) => state.decideFile({ quote: value as '"' })}
            />
          </Row>
        </>
      )}
      <Row label="Lines before the headings" because={f.preamble.because} doubtful={f.preamble.doubtful}>
        <Select
          label="Lines before the headings"
          value={String(f.preamble.value)}
          options={counts(12, f.preamble.value)}
          change={(value) => state.decideFile({ preamble: Number(value) })}
        />
      </Row>
      <Row label="Header rows" because={f.headingLines.because} doubtful={f.headingLines.doubtful}>
        <Select
          label="Header rows"
          value={String(f.headingLines.value)}
          options={counts(2, 0)}
          change={(value) => state.decideFile({ headingLines: Number(value) })}
        />
      </Row>
      <Row label="A line of units below" because={f.unitsLine.because} doubtful={f.unitsLine.doubtful}>
        <Select
          label="A line of units below"
          value={f.unitsLine.value ? 'yes' : 'no'}
          options={yesNo}
          change={(value) => state.decideFile({ unitsLine: value === 'yes' })}
        />
      </Row>
      <Row label="Footer lines" because={f.footer.because} doubtful={f.footer.doubtful}>
        <Select
          label="Footer lines"
          value={String(f.footer.value)}
          options={counts(12, f.footer.value)}
          change={(value) => state.decideFile({ footer: Number(value) })}
        />
      </Row>
      <Row label="Short rows" because={f.shortRows.because} doubtful={f.shortRows.doubtful}>
        <Select
          label="Short rows"
          value={f.shortRows.value}
          options={shortRows}
          change={(value) => state.decideFile({ shortRows: value as 'hold' })}
        />
      </Row>
      {(f.shape.value ?? f.shape.proposed) && (
        <Row label="Shape of the rows" because={f.shape.because} doubtful={f.shape.doubtful}>
          <ShapeChoice state={state} value={f.shape.value} proposed={f.shape.proposed} />
        </Row>
      )}
    </dl>
  );
}

interface ShapeProps {
  readonly state: FileImport;
  readonly value: Shape | null;
  readonly proposed: Shape | null;
}

function ShapeChoice({ state, value, proposed }: ShapeProps) {
  const other = value ?? proposed;
  return (
    <Select
      label="Shape of the rows"
      value={value ? 'other' : 'same'}
      options={[
        ['same', 'as they are'],
        [
          'other',
          other?.to === 'wide' ? 'one row for several, wider' : 'one row for each repeated column, longer',
        ],
      ]}
      change={(chosen) => state.decideFile({ shape: chosen === 'other' ? other : null })}
    />
  );
}

interface RowProps {
  readonly label: string;
  readonly because: string;
  readonly doubtful: boolean;
  readonly children: ComponentChildren;
}

function Row({ label, because, doubtful, children }: RowProps) {
  return (
    <div class={doubtful ? 'doubtful' : undefined}>
      <dt>{label}</dt>
      <dd>
        {children}
        <span class="soft">
          {doubtful && <strong>To check: </strong>}
          {because}
        </span>
      </dd>
    </div>
  );
}
