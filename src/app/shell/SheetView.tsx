import { useEffect, useRef } from 'preact/hooks';
import { command } from '../commands/all.ts';
import { commitDraft, draft, formulaIn, targetOf } from '../formula/draft.ts';
import { begin, endInCell, point, shifts } from '../formula/writing.ts';
import type { GridHost } from '../grid/host.ts';
import type { SheetGrid } from '../grid/SheetGrid.ts';
import { run } from '../state/actions.ts';
import { copy, paste } from '../state/clipboard.ts';
import { usePage } from '../state/context.ts';
import { enter } from '../state/entering.ts';
import { gone, useFollow } from '../state/follow.ts';
import { density } from '../state/look.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';
import { followSheet } from '../state/shown.ts';
import { EmptySheet } from './EmptySheet.tsx';

/** The sheet in the centre. */
export function SheetView() {
  const page = usePage();
  const element = useRef<HTMLDivElement>(null);
  const grid = useRef<SheetGrid | null>(null);
  useEffect(() => followSheet(page), [page]);

  const empty = page.shown.value === null;
  useEffect(() => {
    if (empty) return;
    let gone = false;
    void import('../grid/SheetGrid.ts').then(({ SheetGrid: Grid }) => {
      const shown = page.shown.peek();
      if (gone || !element.current || !shown) return;
      grid.current = new Grid(element.current, shown, hostOf(page));
      page.grid.current = grid.current;
      chooseFirst(page);
    });
    return () => {
      gone = true;
      page.grid.current = null;
      grid.current?.destroy();
      grid.current = null;
    };
  }, [page, empty]);

  useFollow(() => {
    const shown = page.shown.value;
    if (!shown || !grid.current) return;
    const other = page.selection.peek()?.sheet !== shown.sheet.id;
    grid.current.show(shown);
    if (other) chooseFirst(page);
  });
  useFollow(() => {
    density.value;
    grid.current?.restyle();
  });
  // What the active cell is changes with the selection and with the book.
  useFollow(() => {
    const selection = page.selection.value;
    const outline = page.outline.value;
    if (!selection || !outline) return;
    const { sheet, column, row } = selection;
    const of = outline.sheets.find(({ id }) => id === sheet);
    // What was chosen may be gone from the book, or not in it yet.
    if (!of || row >= of.rows || !of.columns.some(({ id }) => id === column)) {
      page.cell.value = null;
      return;
    }
    void page.service.cell({ sheet, column, row }).then((info) => {
      const now = page.selection.peek();
      if (now?.row === row && now.column === column && now.sheet === sheet) page.cell.value = info;
    }, gone);
  });
  const sheet = page.sheet.value;
  return (
    <section class="sheet-place" data-part="sheet" aria-label={sheet?.label ?? 'Sheet'}>
      <div ref={element} class="sheet-grid" />
      <EmptySheet />
    </section>
  );
}

function chooseFirst(page: Page): void {
  const column = page.sheet.peek()?.columns.find(({ hidden }) => !hidden)?.id;
  if (column !== undefined) page.grid.current?.select(0, column, false);
}

function hostOf(page: Page): GridHost {
  const { service } = page;
  const sheetId = () => page.sheet.peek()?.id ?? '';
  return {
    tile: ({ id }, ...at) => service.tile(id, ...at),
    tileOfRows: ({ id }, ...at) => service.tileOfRows(id, ...at),
    editText: async (sheet, column, row) => (await service.cell({ sheet, column, row })).editText,
    selected(selection) {
      const before = page.selection.peek();
      if (
        before?.column !== selection?.column ||
        before?.what !== selection?.what ||
        before?.sheet !== selection?.sheet
      )
        page.scopeChoice.value = null;
      page.selection.value = selection;
    },
    enter: (entry) => void enter(page, sheetId(), entry),
    clear: () => void command('clear-cells').run(page),
    copy: (selection, cut, event) => {
      void copy(page, selection, event).then((copied) => {
        if (copied && cut) void command('clear-cells').run(page);
      });
    },
    paste: (text) => void paste(page, text),
    fill: (columns, from, over) =>
      void run(page, {
        do: 'fill',
        sheet: sheetId(),
        columns: [...columns],
        from: from.row,
        fromRows: from.count,
        row: over.row,
        rows: over.count,
        series: from.count > 1,
      }),
    resized: (column, width) =>
      void run(page, { do: 'change-column', sheet: sheetId(), column: column.id, change: { width } }),
    moved: (columns, before) => {
      const sheet = page.sheet.peek();
      const [column] = columns;
      if (!sheet || !column || columns.length > 1) return;
      const rest = sheet.columns.filter(({ id }) => id !== column.id);
      const index = before ? rest.findIndex(({ id }) => id === before.id) : rest.length;
      void run(page, { do: 'move-column', sheet: sheet.id, column: column.id, index });
    },
    menu: (request) => {
      page.contextMenu.value = request;
    },
    writeFormula: (start) => begin(page, start),
    openHeading: () => void command('edit-column-formula').run(page),
    writing() {
      // The line may have the focus and nothing in it yet: that is a formula about to be written.
      const { current: line } = page.line;
      const target = draft.value ?? (line?.hasFocus() ? targetOf(page) : null);
      if (target && formulaIn(target.scope, target.text) !== null && line?.wantsName()) return 'wants a name';
      return draft.value ? 'whole' : null;
    },
    point: (pointed) => point(page, pointed),
    async takeWritten() {
      endInCell();
      const taken = await commitDraft(page);
      if (!taken) page.line.current?.focus();
      return taken;
    },
    shifted: () => {
      shifts.value++;
    },
    failed: (reason) => say(page, reason instanceof Error ? reason.message : String(reason), 'wrong'),
  };
}
