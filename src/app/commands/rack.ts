/** Commands about rack mode. */
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { SheetOutline } from '../../session/api.ts';
import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const fits = (sheet: SheetOutline | null | undefined): sheet is SheetOutline =>
  !!sheet &&
  sheet.rows > 0 &&
  columnInRole(sheet, 'athlete')?.formula === undefined &&
  columnInRole(sheet, 'athlete') !== undefined &&
  sheet.columns.some(({ kind, formula }) => kind === 'number' && formula === undefined);

/** The sheet on show where it names athletes, else the first that does. */
const rackSheet = ({ sheet, outline }: Page): SheetOutline | undefined =>
  fits(sheet.value) ? sheet.value : outline.value?.sheets.find(fits);

export const rackCommands: readonly PageCommand[] = [
  {
    id: 'rack-mode',
    apart: true,
    group: 'Sheet',
    label: 'Rack mode: test one athlete at a time',
    searchWords: 'trials enter large fields gym phone tablet left right next athlete session',
    enabled: (page) => rackSheet(page) !== undefined,
    run: (page) => {
      const sheet = rackSheet(page);
      if (!sheet) return;
      const { selection } = page;
      const row = selection.value?.sheet === sheet.id ? Math.min(selection.value.row, sheet.rows - 1) : 0;
      page.contentsOpen.value = false;
      page.chart.value = null;
      page.sheetId.value = sheet.id;
      page.rack.value = { sheet: sheet.id, row };
    },
  },
];
