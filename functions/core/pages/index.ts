import { formulas } from './formulas.ts';
import { knownLimits } from './known-limits.ts';
import type { Page } from './page.ts';
import { whereSourcesDiffer } from './where-sources-differ.ts';

export type { Page, Section, Table } from './page.ts';

/** The pages about the numbers, which a report takes along. */
export const pagesAboutNumbers: readonly Page[] = [whereSourcesDiffer, knownLimits];

/** All pages, for the app and for `docs/`. */
export const pages: readonly Page[] = [...pagesAboutNumbers, formulas];
