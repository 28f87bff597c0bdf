/** How a record names what is no longer in the book. */

const MARK = '#REF!';

/** The name of something that goes, marked as formulas mark it: nothing that comes later can be meant by it. */
export const gone = (name: string): string => `${MARK}${name}`;

export const isGone = (name: string): boolean => name.startsWith(MARK);

/** The name without the mark, for a sentence. */
export const goneName = (name: string): string => (isGone(name) ? name.slice(MARK.length) : name);
