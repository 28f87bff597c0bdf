import type { VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { BooksPage } from '../books/BooksPage.tsx';
import { ColumnForm } from '../dialogues/ColumnForm.tsx';
import '../dialogues/dialogues.css';
import { ChartForm } from '../charts/ChartForm.tsx';
import { FilterForm } from '../dialogues/FilterForm.tsx';
import { FindForm } from '../dialogues/FindForm.tsx';
import { Keys } from '../dialogues/Keys.tsx';
import { NameForm } from '../dialogues/NameForm.tsx';
import { SheetForm } from '../dialogues/SheetForm.tsx';
import { VersionsForm } from '../dialogues/VersionsForm.tsx';
import { RulesForm } from '../handouts/RulesForm.tsx';
import { BringIn } from '../intake/BringIn.tsx';
import { Imports } from '../intake/Imports.tsx';
import { usePage } from '../state/context.ts';
import { focusCentre } from '../state/focus.ts';
import type { Dialogue, Page } from '../state/page.ts';
import { Later } from './Later.tsx';

const summaryForm = () => import('../dialogues/SummaryForm.tsx').then(({ SummaryForm }) => SummaryForm);
const reportForm = () => import('../report/ReportForm.tsx').then(({ ReportForm }) => ReportForm);
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

/** Null where what it is about is not in the book. */
function show(open: Dialogue, page: Page, close: () => void): VNode | null {
  switch (open.is) {
    case 'keys':
      return <Keys close={close} />;
    case 'column': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column) ?? null;
      return sheet ? <ColumnForm sheet={sheet} column={column} index={open.index} close={close} /> : null;
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
        <Later load={summaryForm} of={{ sheet, column, close }} failed={close} />
      ) : null;
    }
    case 'marks': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      const column = sheet?.columns.find(({ id }) => id === open.column);
      return sheet && column ? <Later load={marksForm} of={{ sheet, column, close }} failed={close} /> : null;
    }
    case 'books':
      return <BooksPage close={close} />;
    case 'bring in':
      return <BringIn close={close} />;
    case 'imports': {
      const sheet = page.outline.value?.sheets.find(({ id }) => id === open.sheet);
      return sheet ? <Imports sheet={sheet} close={close} /> : null;
    }
    case 'versions':
      return <VersionsForm close={close} />;
    case 'handout rules':
      return <RulesForm close={close} />;
    case 'report':
      return <Later load={reportForm} of={{ close }} failed={close} />;
    case 'chart':
      return <ChartForm chart={open.key ?? null} close={close} />;
    case 'find':
      return <FindForm close={close} />;
    case 'name':
      return <NameForm place={open.place} name={open.name} close={close} />;
  }
}
