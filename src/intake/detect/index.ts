/** Finding out what a table file is like: its layout, and what each of its columns holds. */
export { readHeading } from './heading.ts';
export { HEAD, type Inspected, inspecting } from './inspect.ts';
export { asInLog, countsSets } from './log.ts';
export { boundsFor, Meanings } from './meanings.ts';
export { type Reshaper, reshaper } from './reshape.ts';
export { headingKey, synonymIndex, synonyms } from './synonyms.ts';
