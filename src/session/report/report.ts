import { type Page, pagesAboutNumbers, type Section } from '../../../functions/core/pages/index.ts';
import type { Json } from '../../book/model.ts';
import { z } from '../../book/zod.ts';
import { type Charted, chartOf } from '../charts/chart.ts';
import { chartsOutline } from '../charts/chart-record.ts';
import { doubtsOf } from '../checks/doubts.ts';
import { handoutCautions } from '../handouts/handout.ts';
import { importFrom } from '../imports/imports.ts';
import type { ReadContext } from '../open-book.ts';
import { namesOutline } from '../sheet/views.ts';
import { type Chosen, chosenIn } from './chosen.ts';
import { rowsShown, unitOfNamed } from './found.ts';
import { formulasOf, functionsIn, listed, type Used, type Written } from './functions-used.ts';
import { type Described, describedOf, usualGroups } from './groups.ts';
import { type Reliability, reliabilityOf } from './reliability.ts';
import { type GroupSet, type ReportSettings, reportSettingsOf } from './report-settings.ts';
import { type ResultTable, resultsOf } from './results.ts';

/** What a report cannot know itself: with what and when it is made. */
export const reportRequest = z.strictObject({
  version: z.string().max(50),
  /** The day, ISO. */
  on: z.string().max(40),
});
export type ReportRequest = z.infer<typeof reportRequest>;

/** The cohort report of a book as data: everything that is printed, nothing drawn yet. */
export interface CohortReport extends ReportRequest {
  readonly title: string;
  readonly book: string;
  readonly authors: string | null;
  readonly methods: string | null;
  /** Form of the ICC and confidence level. */
  readonly chosen: Chosen;
  readonly sheets: readonly {
    readonly label: string;
    readonly purpose: string;
    readonly rows: number;
    readonly shown: number;
  }[];
  readonly imports: readonly {
    readonly file: string;
    readonly sheet: string;
    readonly time: string;
    readonly hash: string;
    readonly rows: string;
  }[];
  readonly named: readonly {
    readonly name: string;
    readonly display: string;
    readonly unit: string;
    readonly note: string;
  }[];
  readonly reliability: readonly Reliability[];
  readonly described: readonly Described[];
  readonly results: readonly ResultTable[];
  readonly figures: readonly Charted[];
  readonly formulas: readonly Written[];
  readonly functions: readonly Used[];
  readonly cautions: readonly string[];
  readonly pages: readonly Page[];
  readonly doubts: {
    readonly open: number;
    readonly accepted: readonly { readonly sentence: string; readonly reason: string }[];
  };
  /** What could not be made, a sentence each. */
  readonly problems: readonly string[];
  /** What the book says of its report, and what is described where it says nothing. */
  readonly settings: ReportSettings;
  readonly usualGroups: readonly GroupSet[];
}

/** @throws Refusal where the book's settings for it cannot be read */
export function reportOf(context: ReadContext, request: ReportRequest): CohortReport {
  const { book } = context;
  const settings = reportSettingsOf(book);
  const problems: string[] = [];
  const each = <T, R>(list: readonly T[], make: (one: T) => R): readonly R[] =>
    list.flatMap((one) => {
      try {
        return [make(one)];
      } catch (reason) {
        problems.push(reason instanceof Error ? reason.message : String(reason));
        return [];
      }
    });
  const chosen = chosenIn(context, settings);
  problems.push(...chosen.problems);
  const formulas = formulasOf(book);
  const functions = functionsIn([...formulas, ...ownCalls(settings), ...chartCalls(context)]);
  const names = new Set(functions.map(({ help }) => help.name));
  const usual = usualGroups(context);
  const wanted = settings.charts;
  const charts = chartsOutline(book).filter(({ key }) => wanted === undefined || wanted.includes(key));
  const doubts = doubtsOf(context);
  return {
    ...request,
    title: settings.title?.trim() || `${book.title}: cohort report`,
    book: book.title,
    authors: settings.authors?.trim() || null,
    methods: settings.methods?.trim() || null,
    chosen,
    sheets: book.sheets.map((sheet) => ({
      label: sheet.label,
      purpose: sheet.purpose,
      rows: sheet.rows,
      shown: rowsShown(context, sheet).length,
    })),
    imports: [...book.parts.provenance].flatMap(([key, kept]) => importLine(key, kept)),
    named: namesOutline(context).map((named) => ({
      name: named.name,
      display: named.display,
      unit: unitOfNamed(context, named),
      note: named.note ?? '',
    })),
    reliability: each(settings.trials ?? [], (set) => reliabilityOf(context, set, chosen)),
    described: each(settings.groups ?? usual, (set) => describedOf(context, set)),
    results: resultsOf(context),
    figures: each(charts, ({ key }) => chartOf(context, key)).filter(({ needs }) => needs === undefined),
    formulas: listed(formulas),
    functions,
    cautions: [...new Set([...handoutCautions, ...functions.flatMap(({ help }) => help.cautions)])],
    pages: pagesAboutNumbers.map((page) => ({
      ...page,
      sections: page.sections.filter((one) => applies(one, names)),
    })),
    doubts: {
      open: doubts.filter(({ accepted }) => !accepted).length,
      accepted: doubts.flatMap(({ sentence, accepted }) =>
        accepted ? [{ sentence, reason: accepted.reason }] : [],
      ),
    },
    problems,
    settings,
    usualGroups: usual,
  };
}

/** What a page of texts says of the functions in use; what it says of all numbers always applies. */
const applies = ({ functions }: Section, names: ReadonlySet<string>): boolean =>
  functions === undefined || functions.some((name) => names.has(name));

/** The report's own tables call functions too. */
const ownCalls = ({ trials = [] }: ReportSettings): readonly Written[] =>
  trials.length === 0
    ? []
    : [
        'TEST.ICC(x)',
        'TEST.ICC.LOW(x)',
        'TEST.ICC.HIGH(x)',
        'TEST.MDC(x)',
        'TEST.SEM.TABLE(x)',
        'TEST.SEM(x, y)',
        'TEST.BIAS(x, y)',
        'TEST.LIMIT.LOW(x, y)',
        'TEST.LIMIT.HIGH(x, y)',
        'TEST.CV(x, y)',
      ].map((call) => ({ sheet: 'Report', place: 'Reliability', formula: `=${call}` }));

const callsOfCharts: Readonly<Record<string, readonly string[]>> = {
  scatter: ['COHORT.FIT(x, y)'],
  agreement: ['TEST.BIAS(x, y)', 'TEST.LIMIT.LOW(x, y)', 'TEST.LIMIT.HIGH(x, y)'],
  pairs: ['TEST.MDC(x)'],
  sides: ['TEST.MDC(x)'],
  trend: ['TEST.MDC(x)'],
  'lean-parts': ['LEAN.EXPLAIN("use", x, x, x, x, x, x, x)'],
  repetitions: ['COHORT.FIT(x, y)'],
  load: ['TRAIN.SUM(x, y, 1)', 'TRAIN.MONOTONY(x, y, 1)'],
};

const chartCalls = ({ book }: ReadContext): readonly Written[] =>
  chartsOutline(book).flatMap(({ kind, title }) =>
    (callsOfCharts[kind] ?? []).map((call) => ({ sheet: 'Chart', place: title, formula: `=${call}` })),
  );

function importLine(key: string, kept: Json): CohortReport['imports'] {
  const one = importFrom(key, kept);
  if (!one) return [];
  const { rows } = one;
  const counts = `${rows.in} rows: ${rows.added} added, ${rows.updated} updated,${rows.left > 0 ? ` ${rows.left} keep sheet values,` : ''} ${rows.held} not imported`;
  return [{ file: one.file, sheet: one.sheet, time: one.time, hash: one.hash, rows: counts }];
}
