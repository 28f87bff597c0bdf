/** Asks for the cohort report. */
import type { CohortReport } from '../../session/report/report.ts';
import type { Page } from '../state/page.ts';

declare const LEVERBOOK_VERSION: string;

/** The report as it is now; the day is the one of this machine. */
export function askReport({ service }: Page): Promise<CohortReport> {
  const now = new Date();
  const on = [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  return service.report({ version: LEVERBOOK_VERSION, on });
}
