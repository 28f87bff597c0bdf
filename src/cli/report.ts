/** The command `report`: the cohort report of a book. */
import { Refusal as BookRefusal } from '../book/refusal.ts';
import type { Paper } from '../session/handouts/handout-settings.ts';
import { reportOf } from '../session/report/report.ts';
import { reportDocument } from '../session/report/report-document.ts';
import { Refusal } from './exit.ts';
import { say } from './print.ts';
import { openBook, writePrinted } from './printed.ts';

interface Options {
  readonly out: string;
  readonly paper: Paper;
  readonly replace?: boolean;
}

/** Writes the cohort report of a book as HTML and, where a Chromium is present, as PDF. */
export async function reportCommand(bookPath: string, options: Options, version: string): Promise<void> {
  const session = await openBook(bookPath);
  const on = new Date().toISOString().slice(0, 10);
  try {
    const report = session.ask((context) => reportOf(context, { version, on }));
    for (const problem of report.problems) say(`${problem}`);
    await writePrinted(options, [{ name: 'report', text: reportDocument(report, options.paper) }]);
  } catch (error) {
    if (error instanceof BookRefusal) throw new Refusal(error.message);
    throw error;
  }
}
