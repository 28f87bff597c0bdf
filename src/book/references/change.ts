/** What can happen to the things that a book's parts point at. */

/** New place of a row or column that counts from 0; undefined when it goes. */
export type Place = (at: number) => number | undefined;

/**
 * A change of what a book is made of, told by the ids and names of the book as it is before the change. A column that
 * goes or is copied also moves the columns after it: `letters` says where each goes.
 */
export type BookChange =
  | {
      readonly is: 'rename-column';
      readonly sheet: string;
      readonly column: string;
      readonly to: string;
    }
  | {
      readonly is: 'remove-column';
      readonly sheet: string;
      readonly column: string;
      readonly letters: Place;
    }
  | {
      readonly is: 'copy-column';
      readonly sheet: string;
      readonly column: string;
      /** Id and name of the copy. */
      readonly id: string;
      readonly name: string;
      readonly letters: Place;
    }
  | { readonly is: 'move-columns'; readonly sheet: string; readonly letters: Place }
  | { readonly is: 'move-rows'; readonly sheet: string; readonly rows: Place }
  | { readonly is: 'rename-sheet'; readonly sheet: string; readonly to: string }
  | { readonly is: 'remove-sheet'; readonly sheet: string }
  | { readonly is: 'copy-sheet'; readonly sheet: string; readonly id: string; readonly name: string }
  | { readonly is: 'rename-cell'; readonly name: string; readonly to: string }
  | { readonly is: 'remove-cell'; readonly name: string };
