import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { SheetOutline } from '../../session/api.ts';
import { command } from '../commands/all.ts';
import type { GridHost, GridSelection } from '../grid/host.ts';
import type { SheetGrid } from '../grid/SheetGrid.ts';
import { run } from '../state/actions.ts';
import { density } from '../state/look.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';
import { usePage } from './context.ts';

/** The sheet in the centre. */
export function SheetView() {
  const page = usePage();
  const element = useRef<HTMLDivElement>(null);
  const grid = useRef<SheetGrid | null>(null);

  useEffect(() => {
    let gone = false;
    void import('../grid/SheetGrid.ts').then(({ SheetGrid: Grid }) => {
      const sheet = page.sheet.peek();
      if (gone || !element.current || !sheet) return;
      grid.current = new Grid(element.current, sheet, hostOf(page));
      page.grid.current = grid.current;
      grid.current.select(0, firstShown(sheet), false);
    });
    return () => {
      gone = true;
      page.grid.current = null;
      grid.current?.destroy();
      grid.current = null;
    };
  }, [page, page.sheet.value === null]);

  useSignalEffect(() => {
    const sheet = page.sheet.value;
    if (!sheet || !grid.current) return;
    const other = page.selection.peek()?.sheet !== sheet.id;
    grid.current.show(sheet);
    if (other) grid.current.select(0, firstShown(sheet), false);
  });
  useSignalEffect(() => {
    density.value;
    grid.current?.restyle();
  });
  // What the active cell is changes with the selection and with the book.
  useSignalEffect(() => {
    const selection = page.selection.value;
    const version = page.outline.value?.version;
    if (!selection || version === undefined) return;
    const { sheet, column, row } = selection;
    void page.service.cell({ sheet, column, row }).then((info) => {
      const now = page.selection.peek();
      if (now?.row === row && now.column === column && now.sheet === sheet) page.cell.value = info;
    });
  });
  const sheet = page.sheet.value;
  return (
    <section class="sheet-place" data-part="sheet" aria-label={sheet?.label ?? 'Sheet'}>
      <div ref={element} class="sheet-grid" />
    </section>
  );
}

const firstShown = (sheet: SheetOutline): string => sheet.columns.find(({ hidden }) => !hidden)?.id ?? '';

function hostOf(page: Page): GridHost {
  return {
    fetch: (sheet) => (row, rows, column, columns) => page.service.tile(sheet.id, row, rows, column, columns),
    editText: async (sheet, column, row) => (await page.service.cell({ sheet, column, row })).editText,
    selected(selection: GridSelection | null) {
      const before = page.selection.peek();
      if (
        before?.column !== selection?.column ||
        before?.what !== selection?.what ||
        before?.sheet !== selection?.sheet
      )
        page.scopeChoice.value = null;
      page.selection.value = selection;
    },
    enter(entry) {
      const sheet = page.sheet.peek();
      if (sheet)
        void run(page, {
          do: 'set-cells',
          sheet: sheet.id,
          row: entry.row,
          columns: [...entry.columns],
          texts: entry.texts.map((line) => [...line]),
          formulas: true,
        });
    },
    clear: () => void command('clear-cells').run(page),
    resized: (column, width) => {
      const sheet = page.sheet.peek();
      if (sheet)
        void run(page, { do: 'change-column', sheet: sheet.id, column: column.id, change: { width } });
    },
    menu: (request) => {
      page.contextMenu.value = request;
    },
    openHeading: () => void command('edit-column-formula').run(page),
    failed: (reason) => say(page, reason instanceof Error ? reason.message : String(reason), 'wrong'),
  };
}
