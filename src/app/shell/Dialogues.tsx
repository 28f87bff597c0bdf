/** The dialogue that is open, if any; its code is loaded when it is. */
import type { VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import '../dialogues/dialogues.css';
import { Confirm } from '../dialogues/Confirm.tsx';
import { FilterForm } from '../dialogues/FilterForm.tsx';
import { FindForm } from '../dialogues/FindForm.tsx';
import { NameForm } from '../dialogues/NameForm.tsx';
import { SheetForm } from '../dialogues/SheetForm.tsx';
import { usePage } from '../state/context.ts';
import { focusCentre } from '../state/focus.ts';
import type { Dialogue, Page } from '../state/page.ts';
import { Later } from './Later.tsx';

const columnForm = () => import('../dialogues/ColumnForm.tsx').then(({ ColumnForm }) => ColumnForm);
const summaryForm = () => import('../dialogues/SummaryForm.tsx').then(({ SummaryForm }) => SummaryForm);
const reportForm = () => import('../report/ReportForm.tsx').then(({ ReportForm }) => ReportForm);
const booksPage = () => import('../books/BooksPage.tsx').then(({ BooksPage }) => BooksPage);
const chartForm = () => import('../charts/ChartForm.tsx').then(({ ChartForm }) => ChartForm);
const keysPage = () => import('../dialogues/KeyList.tsx').then(({ KeyList }) => KeyList);
const versionsForm = () => import('../dialogues/VersionsForm.tsx').then(({ VersionsForm }) => VersionsForm);
const rulesForm = () => import('../handouts/RulesForm.tsx').then(({ RulesForm }) => RulesForm);
const bringIn = () => import('../intake/ImportFile.tsx').then(({ ImportFile }) => ImportFile);
const importsPage = () => import('../intake/Imports.tsx').then(({ Imports }) => Imports);
const marksForm = () => import('../marks/MarksForm.tsx').then(({ MarksForm }) => MarksForm);

/** The dialogue that is open, if any. */
export function Dialogues() {
  const page = usePage();
  const open = page.dialogue.value;
  const close = () => {
    page.dialogue.value = null;
    // Back to what is in the centre, once the dialogue is gone.
    requestAnimationFrame(() => {
      if (!page.dialogue.value) focusCentre(page);
    });
  };
  const shown = open && show(open, page, close);
  // What it was about is gone: keys must not wait for it.
  useEffect(() => {
    if (open && !shown) page.dialogue.value = null;
  });
  return shown;
}

/** Null where what it is about is not in the book. Each has its key: one never shows with what another is about. */
function show(open: Dialogue, page: Page, close: () => void): VNode | null {
  switch (open.is) {
    case 'keys':
      return <Later key="keysPage" load={keysPage} of={{ close }} failed={close} />;
    case 'column': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column) ?? null;
      return sheet ? (
        <Later
          key="columnForm"
          load={columnForm}
          of={{ sheet, column, index: open.index, close }}
          failed={close}
        />
      ) : null;
    }
    case 'sheet':
      return (
        <SheetForm
          sheet={page.outline.value?.sheets.find(({ id }) => id === open.sheet) ?? null}
          close={close}
        />
      );
    case 'filter': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column);
      return sheet && column ? <FilterForm sheet={sheet} column={column} close={close} /> : null;
    }
    case 'summary': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column);
      return sheet && column ? (
        <Later key="summaryForm" load={summaryForm} of={{ sheet, column, close }} failed={close} />
      ) : null;
    }
    case 'marks': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column);
      return sheet && column ? (
        <Later key="marksForm" load={marksForm} of={{ sheet, column, close }} failed={close} />
      ) : null;
    }
    case 'books':
      return <Later key="booksPage" load={booksPage} of={{ close }} failed={close} />;
    case 'import':
      return <Later key="bringIn" load={bringIn} of={{ close }} failed={close} />;
    case 'imports': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      return sheet ? (
        <Later key="importsPage" load={importsPage} of={{ sheet, close }} failed={close} />
      ) : null;
    }
    case 'versions':
      return <Later key="versionsForm" load={versionsForm} of={{ close }} failed={close} />;
    case 'handout rules':
      return <Later key="rulesForm" load={rulesForm} of={{ close }} failed={close} />;
    case 'report':
      return <Later key="reportForm" load={reportForm} of={{ close }} failed={close} />;
    case 'chart':
      return (
        <Later key="chartForm" load={chartForm} of={{ chart: open.key ?? null, close }} failed={close} />
      );
    case 'find':
      return <FindForm close={close} />;
    case 'confirm':
      return <Confirm title={open.title} text={open.text} label={open.label} act={open.act} close={close} />;
    case 'name':
      return <NameForm place={open.place} name={open.name} close={close} />;
  }
}
