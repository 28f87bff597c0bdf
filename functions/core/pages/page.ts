/** A page of the product as plain data: the app shows it, `npm run reference` writes it as a file. */
export interface Page {
  /** File name without ending, and address inside the app. */
  readonly id: string;
  readonly title: string;
  /** What the page is for, in a sentence or two. */
  readonly lead: string;
  readonly sections: readonly Section[];
}

export interface Section {
  readonly title: string;
  readonly paragraphs: readonly string[];
  readonly table?: Table;
  /** Functions that this is about, by name. */
  readonly functions?: readonly string[];
  /** Where the statements come from: citation with status in words. */
  readonly sources?: readonly string[];
}

export interface Table {
  readonly caption: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
