import { openBook, openKept } from './state/actions.ts';
import { clearedBooks, readShelf } from './state/keeping.ts';
import type { Page } from './state/page.ts';
import { say } from './state/page.ts';

export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly address: string;
}

/** What the sample books are for, by file name. */
const about: Readonly<Record<string, readonly [title: string, about: string]>> = {
  'squat-screening': [
    'Squat screening',
    'A club measures 24 lifters: lengths, ankle range, lean at parallel, the heel lift that brings it down.',
  ],
  'survey-lengths': [
    'Survey of lengths',
    'Ready for the CSV files of a published survey of 6,068 people: ratios and leans by sex.',
  ],
};

/** The sample books of this build, all from the page's own origin. */
export const samples: readonly Sample[] = Object.entries(
  import.meta.glob<string>('../../sample-books/*.leverbook.json', {
    query: '?url',
    import: 'default',
    eager: true,
  }),
).map(([path, address]) => {
  const id = /([^/]+)\.leverbook\.json$/.exec(path)?.[1] ?? path;
  const [title, words] = about[id] ?? [id.replaceAll('-', ' '), ''];
  return { id, title, about: words, address };
});

/** Opens a sample book; it is kept in the browser only once it is changed. */
export async function openSample(page: Page, { id, title, address }: Sample): Promise<boolean> {
  try {
    const answer = await fetch(address);
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    return await openBook(page, await answer.text(), null, `${id}.leverbook.json`, true);
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : String(reason);
    say(page, `The sample book “${title}” could not be read (${why}). Open a book file instead.`, 'wrong');
    return false;
  }
}

/** What shows itself when the page opens: the book last worked on, else a sample. */
export async function openFirstBook(page: Page): Promise<void> {
  const books = await readShelf(page);
  const gone = clearedBooks(books);
  const [last] = books;
  if (last && (await openKept(page, last.id))) return;
  const [sample] = samples;
  if (sample) await openSample(page, sample);
  if (gone) say(page, gone, 'wrong');
}
