import { readFileSync, type Stats, statSync } from 'node:fs';
import { Refusal } from './exit.ts';

/** What a path names that is no regular file, in words. */
export function kindOf(stat: Stats): string {
  if (stat.isDirectory()) return 'a folder';
  if (stat.isSymbolicLink()) return 'a link';
  if (stat.isFIFO()) return 'a pipe';
  if (stat.isSocket()) return 'a socket';
  return 'a device';
}

/** Reads a whole file, or refuses with what is there instead. `what` is what was asked for, e.g. "a CSV file". */
export function readBytes(path: string, what: string): Uint8Array {
  let stat: Stats;
  try {
    stat = statSync(path);
  } catch (error) {
    throw new Refusal(`There is no file at ${path}: ${reasonOf(error)}. Give the path of ${what}.`);
  }
  if (stat.isDirectory()) throw new Refusal(`${path} is a folder; ${what} is needed. Name the file in it.`);
  // A device or a pipe may never end.
  if (!stat.isFile())
    throw new Refusal(`${path} is ${kindOf(stat)}; ${what} is needed. Save its content as a file first.`);
  try {
    const bytes = readFileSync(path);
    if (bytes.length === 0)
      throw new Refusal(`${path} is empty; ${what} is needed. Check how it was written.`);
    return bytes;
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${path} cannot be read: ${reasonOf(error)}. Check its permissions.`);
  }
}

export function readText(path: string, what: string): string {
  const bytes = readBytes(path, what);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(`${path} is not UTF-8 text; ${what} is needed. Save it as UTF-8.`);
  }
}

/** Why the system did not do something with a file. */
export function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  if (code === 'ENOENT') return 'no such file';
  if (code === 'EACCES' || code === 'EPERM') return 'no permission';
  if (code === 'ENOSPC') return 'the disk is full';
  if (code === 'ENOTDIR' || code === 'EEXIST') return 'a file is where a folder is needed';
  if (code === 'EISDIR') return 'a folder is where a file is needed';
  if (code === 'ENAMETOOLONG') return 'the name is too long';
  if (code === 'EFBIG' || code === 'ERR_FS_FILE_TOO_LARGE') return 'the file is too large';
  if (code === 'EROFS') return 'the disk is read-only';
  return error instanceof Error ? error.message : String(error);
}
