import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Refusal } from './exit.ts';

/** Reads a whole file, or refuses with what stands there instead. `what` is what was asked for, e.g. "a CSV file". */
export function readBytes(path: string, what: string): Uint8Array {
  let stat: ReturnType<typeof statSync>;
  try {
    stat = statSync(path);
  } catch (error) {
    throw new Refusal(`There is no file at ${path}: ${reasonOf(error)}. Give the path of ${what}.`);
  }
  if (stat.isDirectory())
    throw new Refusal(`${path} is a directory; ${what} is needed. Name the file in it.`);
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

/** A set of files that appear together: all are written beside their places first, then put in place. */
export function writeTogether(
  files: readonly { readonly path: string; readonly text: string | Uint8Array }[],
): void {
  const staged: { readonly path: string; readonly beside: string }[] = [];
  try {
    for (const { path, text } of files) {
      mkdirSync(dirname(path), { recursive: true });
      const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
      staged.push({ path, beside });
      writeFileSync(beside, text);
    }
    for (const { path, beside } of staged) renameSync(beside, path);
  } catch (error) {
    for (const { beside } of staged) rmSync(beside, { force: true });
    throw new Refusal(
      `Nothing could be written to ${files[0]?.path ?? 'the folder'}: ${reasonOf(error)}. Check the folder.`,
    );
  }
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  if (code === 'ENOENT') return 'no such file';
  if (code === 'EACCES' || code === 'EPERM') return 'no permission';
  if (code === 'ENOSPC') return 'the disk is full';
  if (code === 'ENOTDIR' || code === 'EEXIST') return 'a file stands where a folder is needed';
  if (code === 'EROFS') return 'the disk is read-only';
  return error instanceof Error ? error.message : String(error);
}
