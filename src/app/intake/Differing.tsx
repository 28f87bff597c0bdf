/** Rows of a file that the sheet has with other values, and what to do with them. */
import { Fragment } from 'preact';
import type { FileReading } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { rowsInWords } from './import-words.ts';
import { Scrolled } from './Scrolled.tsx';

type Found = NonNullable<FileReading['differing']>;

interface Props {
  readonly state: FileImport;
  /** Label of the sheet. */
  readonly sheet: string;
  readonly differing: Found;
}

const MOST = 50;

/** Rows that the sheet has with other values: nobody is entered twice, and nothing is written over, without being asked. */
export function Differing({ state, sheet, differing }: Props) {
  const { count, key, decided, first } = differing;
  // What was just chosen counts at once; the counts follow when the file has been read again.
  const chosen = state.decisions.value.ofDiffering ?? decided;
  const one = count === 1;
  const answers = [
    ['leave', 'Keep sheet values'],
    ['take', 'Use file values; blank and unreadable cells change nothing'],
    ['add', `Add as new ${one ? 'row' : 'rows'}: several with the same ${key.join(' and ')} are right here`],
  ] as const;
  return (
    <fieldset class={chosen === null ? 'intake-question' : 'intake-question intake-answered'}>
      <legend>
        {rowsInWords(count)} of the file {one ? 'is' : 'are'} in {sheet} already, with other values. How
        should
        {one ? ' it' : ' they'} be handled?
      </legend>
      <Scrolled label="Rows that differ">
        <table>
          <thead>
            <tr>
              <th scope="col">{key.join(', ')}</th>
              <th scope="col">Column</th>
              <th scope="col">In the sheet</th>
              <th scope="col">In the file</th>
            </tr>
          </thead>
          <tbody>
            {first.slice(0, MOST).map((row) => (
              <Fragment key={row.line}>
                <Cells row={row} />
              </Fragment>
            ))}
          </tbody>
        </table>
        {count > MOST && <p class="soft">and {rowsInWords(count - MOST)} more</p>}
      </Scrolled>
      <div class="intake-answers">
        {answers.map(([value, words]) => (
          <label key={value} class="check">
            <input
              type="radio"
              name="differing"
              checked={chosen === value}
              onChange={() => state.decide({ ofDiffering: value })}
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** One row of the file: a line for each cell that differs. */
function Cells({ row: { row, who, line, cells } }: { row: Found['first'][number] }) {
  const name = (
    <>
      {who} <span class="soft">row {row + 1}</span>
    </>
  );
  if (cells.length === 0)
    return (
      <tr>
        <th scope="row">{name}</th>
        <td colSpan={3}>the same once more, on line {line}</td>
      </tr>
    );
  return (
    <>
      {cells.map(({ column, there, file }, i) => (
        <tr key={column}>
          {i === 0 && (
            <th scope="row" rowSpan={cells.length}>
              {name}
            </th>
          )}
          <td>{column}</td>
          <td>{there || 'blank'}</td>
          <td>
            <strong>{file || 'blank'}</strong>
          </td>
        </tr>
      ))}
    </>
  );
}
