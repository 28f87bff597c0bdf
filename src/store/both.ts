import { after, type Recovered, recover, type StoredRows } from './recover.ts';
import type { Held } from './second.ts';
import { isNewer } from './segment.ts';

/** What both journals of a book come to. */
export interface Both {
  readonly recovered: Recovered;
  /** The second one ends where `recovered` does, and can be gone on with. */
  readonly goesOn: boolean;
  /** It was needed: the database lacks some of `recovered`. */
  readonly needed: boolean;
}

/** Recovers a book from the database, and from its second journal where that has more of it. */
export async function recoverBoth(rows: StoredRows, held: Held | undefined): Promise<Both> {
  const first = await recover(rows);
  const alone = { recovered: first, goesOn: false, needed: false };
  if (!held || first.newer || isNewer(held.segment)) return alone;
  const { sequence, seal } = held.segment;
  const whole = first.content !== undefined && first.lost === 0 && first.notes.length === 0;
  if (whole && sequence <= first.sequence)
    return { ...alone, goesOn: sequence === first.sequence && seal === first.seal };
  const { book, ...others } = held.rows();
  // What was acknowledged is known to the database even where it has lost it.
  const head = Math.max(book!.head, first.top);
  const second = await recover({ book: { ...book!, head }, ...others });
  const more =
    second.sequence > first.sequence ||
    (second.sequence === first.sequence && first.lost === 0) ||
    !first.content;
  if (!second.content || second.newer || !more || !follows(second, first)) return alone;
  // Where nothing is amiss a kill fell between the one and the other: what was on its way is there, and that is all.
  const notes = [...(whole ? [] : [said(first, second)]), ...second.notes];
  return {
    recovered: { ...second, notes },
    goesOn: second.sequence === sequence && second.seal === seal,
    needed: true,
  };
}

/** Where the end of the one stands in the other. Before its copy nobody can tell any more. */
function follows(second: Recovered, first: Recovered): boolean {
  const { snapshot, rows } = second;
  if (first.content === undefined || first.sequence < snapshot!.sequence) return true;
  const { seal } =
    first.sequence === snapshot!.sequence
      ? { seal: snapshot!.chain }
      : (rows.find(({ sequence }) => sequence === first.sequence) ?? { seal: undefined });
  return seal === first.seal;
}

function said(first: Recovered, second: Recovered): string {
  if (first.content === undefined || second.sequence === first.sequence)
    return `A saved copy of this book was damaged. The book was rebuilt from its second journal${after(second.entries)}.`;
  const more = second.sequence - first.sequence;
  return `${more === 1 ? 'The last change' : `The last ${more} changes`} could not be read back from the browser's database and ${more === 1 ? 'was' : 'were'} taken from the book's second journal${after(second.entries)}.`;
}
