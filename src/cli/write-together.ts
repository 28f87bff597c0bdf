/** Writes a set of files that appear together or not at all. */
import { lstatSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Refusal } from './exit.ts';
import { reasonOf } from './files.ts';
import { checkTargets, nearestFolder, type Target, type Targeting } from './targets.ts';
import { land, staging } from './thread.ts';

export interface Written extends Target {
  readonly text: string | Uint8Array;
}

/**
 * A set of files that appear together: all are written beside their places first, then put in place by renaming. What
 * fails before the first is in place leaves nothing behind; where one fails later, the message lists what is in place.
 * @throws Refusal
 */
export function writeTogether(files: readonly Written[], targeting: Targeting): void {
  checkTargets(files, targeting);
  const staged = files.map(({ path }) => ({
    path,
    beside: join(dirname(path), `.${basename(path)}.${process.pid}.part`),
  }));
  const made = [...new Set(files.flatMap(({ path }) => missingFolder(path)))];
  const takeBack = (): void => {
    for (const path of [...staged.map(({ beside }) => beside), ...made])
      rmSync(path, { recursive: true, force: true });
  };
  staging([...staged.map(({ beside }) => beside), ...made]);
  try {
    for (const [i, { path, beside }] of staged.entries()) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(beside, files[i]!.text, { flag: 'wx', ...modeOf(path) });
    }
    // Meanwhile another program may have been there.
    checkTargets(files, targeting);
  } catch (error) {
    takeBack();
    if (error instanceof Refusal) throw error;
    throw new Refusal(
      `No file was written: ${(error as { path?: string }).path ?? 'a file'}: ${reasonOf(error)}. Check the folder.`,
    );
  }
  land();
  const landed: string[] = [];
  try {
    for (const { path, beside } of staged) {
      renameSync(beside, path);
      landed.push(path);
    }
  } catch (error) {
    for (const { beside } of staged) rmSync(beside, { force: true });
    const failed = staged[landed.length]!.path;
    throw new Refusal(
      landed.length === 0
        ? `No file was written: ${failed}: ${reasonOf(error)}. Check the folder.`
        : `Only ${landed.length} of ${staged.length} files were written (${landed.join(', ')}): ${failed}: ${reasonOf(error)}. Check the folder, and run the command again with --replace.`,
    );
  }
}

/** The uppermost folder that has to be made for a file; none where its folder exists. */
function missingFolder(path: string): string[] {
  const exists = nearestFolder(path);
  let folder = dirname(resolve(path));
  if (folder === exists) return [];
  while (dirname(folder) !== exists) folder = dirname(folder);
  return [folder];
}

/** A file that takes another's place lets the same people read it. */
function modeOf(path: string): { mode?: number } {
  try {
    return { mode: lstatSync(path).mode & 0o777 };
  } catch {
    return {};
  }
}
