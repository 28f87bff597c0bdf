import type { Database } from './database.ts';
import type { Files } from './files.ts';
import { alone, hold } from './lock.ts';
import { moment, type Recovered, recover } from './recover.ts';
import { putRows } from './rows.ts';
import { SecondJournal } from './second.ts';
import { booksIn } from './slots.ts';
import { matchVersions } from './version-files.ts';

/**
 * Puts books back into the database that have a second journal and are not there: the browser has deleted it as damaged.
 * Answers what is to be said about each, by its id. A book of which nothing can be read is left where it is.
 */
export async function bringBack(database: Database, files: Files): Promise<ReadonlyMap<string, string>> {
  const notes = new Map<string, string>();
  // In one tab at a time: the next one finds them there.
  await alone('bring back', async () => {
    const known = new Set(await database.getAllKeys('books'));
    for (const id of await booksIn(files)) {
      if (known.has(id)) continue;
      const held = await hold(id, false, () => undefined);
      if (!held) continue;
      try {
        const note = await bringBackOne(database, files, id);
        if (note !== undefined) notes.set(id, note);
      } finally {
        held.release();
      }
    }
  });
  return notes;
}

async function bringBackOne(database: Database, files: Files, id: string): Promise<string | undefined> {
  const opened = await SecondJournal.open(files, { id, created: 0, writer: 0, title: '' });
  if (!opened) return undefined;
  const { second, held } = opened;
  try {
    const stored = held?.rows();
    if (!held || !stored?.book) return undefined;
    const recovered = await recover(stored);
    const { snapshot, rows, sequence, seal } = recovered;
    if (!snapshot || recovered.newer) return undefined;
    const book = { ...stored.book, head: sequence, seal };
    await putRows(database, { book, snapshots: [snapshot], entries: rows });
    const versions = await matchVersions(database, files, id);
    return sentence(book.title, recovered, versions, held.segment.cut || recovered.lost > 0);
  } finally {
    second.close();
  }
}

function sentence(title: string, { entries, snapshot }: Recovered, versions: number, cut: boolean): string {
  const last = entries.at(-1);
  const until = last ? `“${last.words}”` : `the one before ${moment(snapshot?.time)}`;
  const end = cut
    ? `the last change that could be read is ${until}, and what came after it is lost`
    : `its last saved change is ${until}`;
  const named =
    versions === 0 ? '' : `, with ${versions === 1 ? 'its named version' : `its ${versions} named versions`}`;
  return `The browser has lost its saved copy of “${title}”. The book is restored from its second journal${named}; ${end}. Check your last changes, and save the book to a file.`;
}
