import { CameFrom } from '../intake/CameFrom.tsx';
import { becameOffline } from '../offline/offline.ts';
import { rowsThere } from '../state/clipboard.ts';
import { usePage } from '../state/context.ts';

/** Below the sheet: how large it is and what is selected. */
export function StatusLine() {
  const page = usePage();
  const sheet = page.sheet.value;
  const selection = page.selection.value;
  const cell = page.cell.value;
  const news = (
    <span class="status-news" role="status">
      {becameOffline.value && 'Leverbook now works offline.'}
    </span>
  );
  if (!sheet) return <footer class="status">{news}</footer>;
  return (
    <footer class="status">
      <span>{`${counted(sheet.rows, 'row')}, ${counted(sheet.columns.length, 'column')}`}</span>
      {selection && <span>{inWords(rowsThere(selection.runs, sheet.rows), selection.columns.length)}</span>}
      {cell?.override && <span class="own-note">override of the column formula</span>}
      {cell?.marked && <span class="marked-note">{cell.marked.join(' ')}</span>}
      <CameFrom />
      {cell?.sentence && (
        <span class={cell.pending ? 'status-sentence soft' : 'status-sentence'}>{cell.sentence}</span>
      )}
      {news}
    </footer>
  );
}

function inWords(rows: number, columns: number): string {
  if (rows === 0) return 'a new row starts here';
  return rows * columns === 1 ? 'one cell selected' : `${rows} × ${columns} cells selected`;
}

const counted = (n: number, what: string): string => `${n.toLocaleString('en')} ${what}${n === 1 ? '' : 's'}`;
