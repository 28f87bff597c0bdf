import type { FileReading, ShownRow } from '../../session/imports/file-reading.ts';
import { Scrolled } from './Scrolled.tsx';

/** Rows as they would stand in the sheet; an unreadable cell says why. */
export function Rows({
  columns,
  rows,
  label,
}: {
  columns: readonly string[];
  rows: readonly ShownRow[];
  label: string;
}) {
  const reasons = [...new Set(rows.flatMap(({ cells }) => cells.flatMap(({ held }) => held ?? [])))];
  return (
    <>
      <Scrolled label={label}>
        <table>
          <thead>
            <tr>
              <th scope="col">Line</th>
              {columns.map((column, i) => (
                <th key={i} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ line, cells }) => (
              <tr key={line}>
                <th scope="row">{line}</th>
                {cells.map(({ text, held }, i) => (
                  <td key={i} class={held ? 'held' : undefined} title={held}>
                    {text}
                    {held && <span class="held-word"> unreadable</span>}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
      {reasons.length > 0 && (
        <ul class="intake-notes">
          {reasons.slice(0, 8).map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
          {reasons.length > 8 && <li>and {reasons.length - 8} more reasons</li>}
        </ul>
      )}
    </>
  );
}

/** What an update would change, before it is written. */
export function Changes({ changes }: Pick<FileReading, 'changes'>) {
  return (
    <Scrolled label="What would change">
      <table>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">Column</th>
            <th scope="col">Now</th>
            <th scope="col">Then</th>
          </tr>
        </thead>
        <tbody>
          {changes.slice(0, 100).map(({ row, column, before, after }) => (
            <tr key={`${row} ${column}`}>
              <th scope="row">{row + 1}</th>
              <td>{column}</td>
              <td>{before || 'blank'}</td>
              <td>
                <strong>{after}</strong>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {changes.length > 100 && <p class="soft">and more</p>}
    </Scrolled>
  );
}

/** Rows that cannot be placed, as they came, with the reason. */
export function HeldList({ rows }: { rows: FileReading['heldRows'] }) {
  return (
    <ul class="intake-held">
      {rows.slice(0, 50).map(({ line, raw, reason }) => (
        <li key={line}>
          <span class="soft">line {line}</span> <code>{raw}</code> <span>{reason}</span>
        </li>
      ))}
      {rows.length > 50 && <li>and {rows.length - 50} more</li>}
    </ul>
  );
}
