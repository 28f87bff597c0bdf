/** SDs of measuring that errors of a lean are for where a book sets none: a tape to 1 cm, an ankle test to 2° (working assumption). */
export const MEASURING_ERROR = { length: 1, ankle: 2 } as const;

/** How exactly a joint can be placed, cm: a working assumption, shown as such. */
export const PLACING = 1;
