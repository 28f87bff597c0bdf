import { createBook } from '../book/book.ts';
import type { Edit } from '../book/edit.ts';
import { contentOf as sheetContent } from '../book/edits/remove-sheet.ts';
import { type Book, partNames } from '../book/model.ts';

/** The edits that make a book of one without sheets. They hold on to its arrays as they are now, without copying. */
function makings(book: Book, from: Book): Edit[] {
  const parts = partNames.flatMap((part) => {
    const gone = [...from.parts[part].keys()].filter((key) => !book.parts[part].has(key));
    return [
      ...gone.map((key): Edit => ({ do: 'set-part', part, key, value: null })),
      ...[...book.parts[part]].map(([key, value]): Edit => ({ do: 'set-part', part, key, value })),
    ];
  });
  return [
    { do: 'set-title', title: book.title },
    ...book.sheets.map((sheet, index): Edit => ({ do: 'add-sheet', index, sheet: sheetContent(sheet) })),
    ...[...book.names.values()].map(({ name, ...target }): Edit => ({ do: 'set-name', name, target })),
    ...parts,
  ];
}

/** The one edit that makes this book of a new one: what a snapshot is. */
export const contentOf = (book: Book): Edit => ({ do: 'batch', edits: makings(book, createBook()) });

/** The one edit that makes `target` of `book`, whatever stands in it: going back to a version, as a step that can be undone. */
export const turnInto = (book: Book, target: Book): Edit => ({
  do: 'batch',
  edits: [
    ...book.sheets.map((sheet): Edit => ({ do: 'remove-sheet', sheet: sheet.id })),
    ...makings(target, book),
  ],
});
