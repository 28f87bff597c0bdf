import { openBook } from './state/actions.ts';
import type { Page } from './state/page.ts';
import { say } from './state/page.ts';

/** Addresses of the sample books, all from the page's own origin. */
const samples = import.meta.glob<string>('../../sample-books/*.leverbook.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

const first = 'squat-screening';

/** The book that shows itself when the page opens. */
export async function openFirstBook(page: Page): Promise<void> {
  const [, address] = Object.entries(samples).find(([path]) => path.includes(`/${first}.`)) ?? [];
  if (!address)
    return say(page, 'The sample book is not part of this build. Open a book file instead.', 'wrong');
  try {
    const answer = await fetch(address);
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    await openBook(page, await answer.text(), null, `${first}.leverbook.json`);
  } catch (reason) {
    say(
      page,
      `The sample book could not be read (${reason instanceof Error ? reason.message : String(reason)}). Open a book file instead.`,
      'wrong',
    );
  }
}
