/** The page: header, contents, sheet, panel and status line. */
import { useEffect } from 'preact/hooks';
import { SampleStrip } from '../books/SampleStrip.tsx';
import { ChartPlace } from '../charts/ChartPlace.tsx';
import { bindKeys } from '../commands/all.ts';
import { CellFormula } from '../formula/CellFormula.tsx';
import { FormulaLine } from '../formula/FormulaLine.tsx';
import { receiveFiles } from '../intake/arriving.ts';
import { UpdateStrip } from '../offline/UpdateStrip.tsx';
import { PageContext } from '../state/context.ts';
import { narrow } from '../state/look.ts';
import type { Page } from '../state/page.ts';
import { Contents } from './Contents.tsx';
import { ContextMenu } from './ContextMenu.tsx';
import { Dialogues } from './Dialogues.tsx';
import { Finder } from './Finder.tsx';
import { Header } from './Header.tsx';
import { KeepStrip } from './KeepStrip.tsx';
import { Later } from './Later.tsx';
import { NarrowBar } from './NarrowBar.tsx';
import { NoticeLine } from './NoticeLine.tsx';
import { RackPlace } from './RackPlace.tsx';
import { SheetView } from './SheetView.tsx';
import './shell.css';
import { SidePanel } from './SidePanel.tsx';
import { StatusLine } from './StatusLine.tsx';
import { ViewStrip } from './ViewStrip.tsx';

const figureStrip = async () => (await import('../figure/FigureStrip.tsx')).FigureStrip;

/** The page whole. */
export function App({ page }: { page: Page }) {
  useEffect(() => bindKeys(page), [page]);
  useEffect(() => receiveFiles(page), [page]);
  return (
    <PageContext.Provider value={page}>
      <div class={`page${page.side.value ? '' : ' no-side'}`}>
        <Header />
        <Contents />
        <main class="centre">
          <FormulaLine />
          <div class="strips">
            <SampleStrip />
            <KeepStrip />
            <UpdateStrip />
            {narrow.value && <Later load={figureStrip} of={{}} />}
          </div>
          <ViewStrip />
          <SheetView />
          <CellFormula />
          <StatusLine />
          <ChartPlace />
          <RackPlace />
        </main>
        <SidePanel />
        <NarrowBar />
      </div>
      <NoticeLine />
      <ContextMenu />
      <Finder />
      <Dialogues />
    </PageContext.Provider>
  );
}
