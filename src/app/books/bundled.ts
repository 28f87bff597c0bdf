import { openBook } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';

/** A book that comes with the page: a sample with invented people, or a template without any. */
export interface Bundled {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly address: string;
  /** It holds invented people. */
  readonly peopled: boolean;
}

type Words = readonly [title: string, about: string];

/** What the sample books are for, by file name, in the order in which they are offered. */
const aboutSamples: Readonly<Record<string, Words>> = {
  'squat-screening': [
    'Squat screening',
    'A club measures 24 lifters: lengths, ankle range, lean at parallel, heel lifts, a retest and eight weeks of training.',
  ],
  'wall-test-reliability': [
    'Knee-to-wall reliability',
    'Two testers, three trials, 40 people: ICC, SEM, MDC, agreement, the group by sex, a regression of the lean.',
  ],
  'two-years-of-squats': [
    'Two years of squats',
    'One lifter’s log: estimated 1RM, best sets, weekly volume and load, own build and heel lift needed.',
  ],
  'survey-lengths': [
    'Survey of lengths',
    'Ready for the CSV files of a published survey of 6,068 people: ratios and leans by sex.',
  ],
};

const aboutTemplates: Readonly<Record<string, Words>> = {
  'squat-screening': [
    'Screening, retest and monitoring',
    'For a group: lengths, knee-to-wall, lean, heel lifts, handouts, real changes and weekly training load.',
  ],
  'wall-test-reliability': [
    'Reliability and cohort',
    'For a study: trials of two testers, a table of people, ICC with interval, SEM, MDC, percentiles by sex, regression.',
  ],
  'two-years-of-squats': [
    'My training and my build',
    'For yourself: a log with estimated 1RM, best sets and weeks, plus lean and heel lift from a tape measure.',
  ],
};

const sampleFiles = import.meta.glob<string>('../../../sample-books/*.leverbook.json', {
  query: '?url',
  import: 'default',
  eager: true,
});
const templateFiles = import.meta.glob<string>('../../../sample-books/templates/*.leverbook.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

const bundled = (
  files: Readonly<Record<string, string>>,
  about: Readonly<Record<string, Words>>,
  peopled: boolean,
): Bundled[] =>
  Object.entries(files)
    .map(([path, address]) => {
      const id = /([^/]+)\.leverbook\.json$/.exec(path)?.[1] ?? path;
      const [title, words] = about[id] ?? [id.replaceAll('-', ' '), ''];
      return { id, title, about: words, address, peopled };
    })
    .sort((a, b) => Object.keys(about).indexOf(a.id) - Object.keys(about).indexOf(b.id));

/** All from the page's own origin. */
export const samples: readonly Bundled[] = bundled(sampleFiles, aboutSamples, true);
export const templates: readonly Bundled[] = bundled(templateFiles, aboutTemplates, false);

/** Opens such a book; it is kept in the browser only once it is changed. */
export async function openBundled(page: Page, { id, title, address, peopled }: Bundled): Promise<boolean> {
  try {
    const text = await (await fetched(address)).text();
    const opened = await openBook(page, text, null, `${id}.leverbook.json`, true);
    if (!peopled) page.sample.value = false;
    return opened;
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : String(reason);
    say(page, `The book “${title}” could not be read (${why}). Open a book file instead.`, 'wrong');
    return false;
  }
}

/** A file of the page's own. @throws Error with what the server answered */
export async function fetched(address: string): Promise<Response> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer;
}
