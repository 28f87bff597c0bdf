/** From bytes to rows of texts: encodings, dialects, workbooks. */
export { decodeAll, decodePieces, type EncodingFinding, findingEncoding, isEncoding } from './decode.ts';
export { findDialect } from './dialect.ts';
export { hashing, hashOfSoon } from './hash.ts';
export { kindOfFile } from './kind-of-file.ts';
export { oneLineEnd } from './line-ends.ts';
export { type Batch, type Dialect, parseRows, parseText, parsingText } from './parse.ts';
export { prepare, preparing } from './prepare.ts';
export type { Prepared, PrepareOptions } from './prepared.ts';
