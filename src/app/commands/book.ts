/** Commands about the book as a whole: open, save, import, print and leave. */
import { download, fileNameFor, pickBook, writeBook } from '../files/files.ts';
import { importFiles } from '../intake/file-import.ts';
import { guarded, openBook } from '../state/actions.ts';
import { mayLeave } from '../state/leave.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const isOpen = (page: Page): boolean => page.outline.value !== null;

async function save(page: Page, elsewhere: boolean): Promise<void> {
  await guarded(page, async () => {
    const { outline, file } = page;
    if (!outline.value) return false;
    const name = file.value?.name ?? fileNameFor(outline.value.title, '.leverbook.json');
    let { changed } = outline.value;
    const text = async () => {
      const saved = await page.service.save();
      changed = saved.changed;
      return saved.text;
    };
    const written = await writeBook(text, file.value, name, elsewhere);
    if (!written) return false;
    file.value = written;
    // What was typed since is not in the file, and what the worker had taken in already is.
    page.savedAt.value = changed;
    say(page, `Saved as ${written.name}`);
    return true;
  });
}

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** The book as a workbook file for other programs; what is open stays the book's own file. */
async function saveXlsx(page: Page): Promise<void> {
  const title = page.outline.value?.title ?? '';
  page.busy.value = 'Exporting as XLSX';
  page.stop.value = () => void page.service.stopXlsx();
  try {
    await guarded(page, async () => {
      const written = await page.service.xlsx();
      if (!written.ok) {
        say(page, written.sentence, 'wrong');
        return false;
      }
      const name = fileNameFor(title, '.xlsx');
      download(new Uint8Array(written.bytes), name, XLSX);
      say(page, `Exported as ${name}. The last sheet in that file lists what became of each formula.`);
      return true;
    });
  } finally {
    page.busy.value = null;
    page.stop.value = null;
  }
}

export const bookCommands: readonly PageCommand[] = [
  {
    id: 'books',
    group: 'Book',
    label: 'All books…',
    keys: ['Alt+B'],
    icon: 'contents',
    searchWords: 'start recent new blank template csv sample',
    run: ({ dialogue }) => {
      dialogue.value = { is: 'books' };
    },
  },
  {
    id: 'open-book',
    group: 'Book',
    label: 'Open a book file…',
    keys: ['Mod+O'],
    icon: 'open',
    searchWords: 'load file',
    run: async (page) => {
      if (!mayLeave(page)) return;
      await guarded(page, async () => {
        const picked = await pickBook();
        return picked !== null && openBook(page, picked.text, picked.file, picked.file.name);
      });
    },
  },
  {
    id: 'save-book',
    apart: true,
    group: 'Book',
    label: 'Save',
    keys: ['Mod+S'],
    icon: 'save',
    searchWords: 'write store download',
    enabled: isOpen,
    run: (page) => save(page, false),
  },
  {
    id: 'save-book-as',
    group: 'Book',
    label: 'Save a copy…',
    keys: ['Mod+Shift+S'],
    searchWords: 'copy download',
    enabled: isOpen,
    run: (page) => save(page, true),
  },
  {
    id: 'export-xlsx',
    group: 'Book',
    label: 'Export as XLSX',
    searchWords: 'export workbook spreadsheet opendocument ods download formulas',
    enabled: isOpen,
    run: saveXlsx,
  },
  {
    id: 'import-file',
    apart: true,
    group: 'Book',
    label: 'Import CSV, XLSX or ODS…',
    icon: 'gathered',
    searchWords: 'bring in file load table roster log',
    enabled: isOpen,
    run: (page) => importFiles(page),
  },
  {
    id: 'versions',
    group: 'Book',
    label: 'Versions of this book…',
    searchWords: 'history go back keep compare snapshot',
    enabled: isOpen,
    run: ({ dialogue }) => {
      dialogue.value = { is: 'versions' };
    },
  },
  {
    id: 'imports',
    apart: true,
    group: 'Sheet',
    label: 'Import history…',
    searchWords: 'where rows came from provenance file unreadable not imported fix settings',
    enabled: (page) => page.sheet.value !== null,
    run: ({ dialogue, sheet }) => {
      if (sheet.value) dialogue.value = { is: 'imports', sheet: sheet.value.id };
    },
  },
  {
    id: 'export-csv',
    group: 'Sheet',
    label: 'Save this sheet as CSV',
    searchWords: 'export download table',
    enabled: (page) => page.sheet.value !== null,
    run: async (page) => {
      const sheet = page.sheet.value;
      if (!sheet) return;
      await guarded(page, async () => {
        download(await page.service.csv(sheet.id), fileNameFor(sheet.label, '.csv'), 'text/csv');
        return true;
      });
    },
  },
];
