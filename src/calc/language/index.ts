/** The formula language as text and tree: reading, printing, walking, rewriting and moving formulas. */
export { lettersOf } from './address.ts';
export { shiftRelative } from './move.ts';
export { parse } from './parse.ts';
export { numberText, quoted } from './print.ts';
export { type Mention, rewrite } from './rewrite.ts';
export { childrenOf, walk } from './walk.ts';
