import type { CohortReport } from '../../session/report/report.ts';
import { reportDocument } from '../../session/report/report-document.ts';
import { reportPage } from '../../session/report/report-page.ts';
import { reportStyle } from '../../session/report/report-style.ts';
import { asElements } from '../figure/Drawing.tsx';
import { openPreview, PrintPreview } from '../print/PrintPreview.tsx';
import { guarded } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { askReport } from './ask.ts';

/** Shows the cohort report over the page, ready for the printer. */
export async function openReport(page: Page): Promise<void> {
  await guarded(page, async () => {
    const report = await askReport(page);
    openPreview(page, (close) => (
      <ReportView
        report={report}
        close={close}
        change={() => {
          close();
          page.dialogue.value = { is: 'report' };
        }}
      />
    ));
    return true;
  });
}

function ReportView({
  report,
  close,
  change,
}: {
  report: CohortReport;
  close: () => void;
  change: () => void;
}) {
  return (
    <PrintPreview
      label="Cohort report"
      amount="Cohort report"
      file={`${report.book}-report`}
      style={reportStyle}
      html={(paper) => reportDocument(report, paper)}
      close={close}
      more={
        <button type="button" class="firm" onClick={change}>
          Edit contents…
        </button>
      }
    >
      {asElements(reportPage(report))}
    </PrintPreview>
  );
}
