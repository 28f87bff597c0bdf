/** What kind of file arrived, by its first bytes. */
import { IntakeRefusal } from '../sentences/index.ts';

export type FileKind = 'text' | 'workbook';

interface Known {
  readonly begins: readonly number[];
  readonly what: string;
  readonly remedy?: string;
}

/** First bytes of files that people mistake for tables (each format's own signature). */
const known: readonly Known[] = [
  {
    begins: [0xd0, 0xcf, 0x11, 0xe0],
    what: 'a spreadsheet of the old binary kind (.xls), or one locked with a password',
    remedy: 'Save it as .xlsx, .ods or CSV, without a password.',
  },
  { begins: [0x25, 0x50, 0x44, 0x46], what: 'a PDF document' },
  { begins: [0x89, 0x50, 0x4e, 0x47], what: 'a picture (PNG)' },
  { begins: [0xff, 0xd8, 0xff], what: 'a picture (JPEG)' },
  { begins: [0x47, 0x49, 0x46, 0x38], what: 'a picture (GIF)' },
  { begins: [0x1f, 0x8b], what: 'a compressed file (gzip)', remedy: 'Unpack it first.' },
  { begins: [0x42, 0x5a, 0x68], what: 'a compressed file (bzip2)', remedy: 'Unpack it first.' },
  { begins: [0x37, 0x7a, 0xbc, 0xaf], what: 'a compressed file (7z)', remedy: 'Unpack it first.' },
  { begins: [0x52, 0x61, 0x72, 0x21], what: 'a compressed file (RAR)', remedy: 'Unpack it first.' },
  { begins: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], what: 'a database file' },
  { begins: [0x7f, 0x45, 0x4c, 0x46], what: 'a program' },
];

const ZIP = [0x50, 0x4b, 0x03, 0x04];
const starts = (bytes: Uint8Array, begin: readonly number[]): boolean =>
  begin.every((byte, i) => bytes[i] === byte);

/**
 * Tells text from a zipped workbook, and refuses what is neither.
 * @throws IntakeRefusal for an empty file and for files of another kind
 */
export function kindOfFile(bytes: Uint8Array, name: string): FileKind {
  if (bytes.length === 0) throw new IntakeRefusal('empty-file', { name });
  if (starts(bytes, ZIP)) return 'workbook';
  for (const { begins, what, remedy } of known)
    if (starts(bytes, begins))
      throw new IntakeRefusal('not-a-table', { name, what, ...(remedy ? { remedy } : {}) });
  const head = new TextDecoder('windows-1252').decode(bytes.subarray(0, 400)).trimStart();
  if (/^(ï»¿)?\s*\{\s*"(leverbook|format)"/.test(head)) throw new IntakeRefusal('is-a-book', { name });
  if (/^(ï»¿)?<(!doctype html|html|\?xml|svg)/i.test(head))
    throw new IntakeRefusal('not-a-table', { name, what: 'a web page or an XML document' });
  if (/^(ï»¿)?\s*[{[]\s*("|\{|\[|\})/.test(head))
    throw new IntakeRefusal('not-a-table', { name, what: 'a JSON document' });
  return 'text';
}
