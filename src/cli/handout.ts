/** The command `handout`: a page for each athlete. */
import { Refusal as BookRefusal } from '../book/refusal.ts';
import { handoutDocument } from '../session/handouts/handout-document.ts';
import type { Paper } from '../session/handouts/handout-settings.ts';
import { handoutsOf } from '../session/handouts/handouts.ts';
import type { Session } from '../session/session.ts';
import { Refusal } from './exit.ts';
import { nearest } from './nearest.ts';
import { say } from './print.ts';
import { openBook, writePrinted } from './printed.ts';

interface Options {
  readonly sheet?: string;
  readonly athlete?: readonly string[];
  readonly out: string;
  readonly paper: Paper;
  readonly replace?: boolean;
}

/** Writes a page for each athlete as HTML and, where a Chromium is present, as PDF. All of them, or nothing. */
export async function handoutCommand(bookPath: string, options: Options): Promise<void> {
  const session = await openBook(bookPath);
  const made = madeFor(session, options.sheet);
  const wanted = chosen(made.handouts, options.athlete ?? []);
  for (const note of made.notes) say(`${note}`);
  const names = fileNames(wanted.map(({ athlete }) => athlete));
  await writePrinted(
    options,
    wanted.map((handout, index) => ({
      name: names[index]!,
      text: handoutDocument({ ...made, handouts: [handout] }, options.paper),
    })),
  );
}

function madeFor(session: Session, sheet: string | undefined) {
  try {
    return session.ask((context) => handoutsOf(context, sheet === undefined ? {} : { sheet }));
  } catch (error) {
    if (error instanceof BookRefusal) throw new Refusal(error.message);
    throw error;
  }
}

/** The handouts of the athletes named; all of them where none is named. */
function chosen<T extends { readonly athlete: string }>(
  all: readonly T[],
  names: readonly string[],
): readonly T[] {
  if (names.length === 0) return all;
  return names.flatMap((name) => {
    const found = all.filter(({ athlete }) => athlete.toLowerCase() === name.trim().toLowerCase());
    if (found.length > 0) return found;
    const near = nearest(name, [...new Set(all.map(({ athlete }) => athlete))]);
    throw new Refusal(
      `--athlete names "${name}", whom the sheet does not have.${near ? ` Did you mean ${near}?` : ''}`,
    );
  });
}

/** A file name for each athlete, none twice, that every system can keep. */
export function fileNames(athletes: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return athletes.map((athlete) => {
    const plain =
      athlete
        .normalize('NFC')
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'athlete';
    let name = plain;
    for (let n = 2; taken.has(name); n++) name = `${plain}-${n}`;
    taken.add(name);
    return name;
  });
}
