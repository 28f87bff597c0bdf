import { accessSync, constants, lstatSync, realpathSync, type Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Refusal } from './exit.ts';
import { kindOf, reasonOf } from './files.ts';

/** A file that is to be written, and the option that asks for it. */
export interface Target {
  readonly path: string;
  readonly option: string;
}

export interface Targeting {
  /** Files that exist may be replaced. */
  readonly replace: boolean;
  /** Files that the command reads, and that no target may replace. */
  readonly reads?: readonly string[];
}

/**
 * Refuses targets that could not all be written: folders, devices, links and pipes in the place of a file, files that
 * exist where none may be replaced, two that are one file, folders that cannot be made or written into.
 * @throws Refusal
 */
export function checkTargets(targets: readonly Target[], { replace, reads = [] }: Targeting): void {
  const read = new Set(reads.map((path) => trueName(path)));
  const seen = new Map<string, Target>();
  for (const target of targets) {
    const { path, option } = target;
    checkPlace(target, replace);
    const name = trueName(path);
    if (read.has(name))
      throw new Refusal(`${option} would replace ${path}, which this command reads. Choose another name.`);
    const other = seen.get(name);
    if (other)
      throw new Refusal(
        `${option} and ${other.option} name the same file, ${path}. Give each a name of its own.`,
      );
    seen.set(name, target);
  }
  for (const { path, option } of targets)
    for (let folder = dirname(trueName(path)); folder !== dirname(folder); folder = dirname(folder)) {
      const other = seen.get(folder);
      if (other)
        throw new Refusal(
          `${other.option} names the file ${other.path}, and ${option} needs a folder of that name. Choose another name for one of them.`,
        );
    }
}

function checkPlace({ path, option }: Target, replace: boolean): void {
  const stat = lookAt(path);
  if (stat && !stat.isFile())
    throw new Refusal(
      `${option} names ${path}, which is ${kindOf(stat)}; only a regular file is replaced. Choose another name.`,
    );
  if (stat && !replace)
    throw new Refusal(`${path} exists. Choose another name for ${option}, or add --replace.`);
  const folder = nearestFolder(path);
  try {
    if (!lstatSync(realpathSync(folder)).isDirectory()) throw new Error('a file is where a folder is needed');
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    throw new Refusal(
      `${option} cannot write ${path}: ${folder}: ${reasonOf(error)}. Choose another folder.`,
    );
  }
}

function lookAt(path: string): Stats | undefined {
  try {
    return lstatSync(path);
  } catch (error) {
    const { code } = error as { code?: string };
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined;
    throw new Refusal(`${path} cannot be written: ${reasonOf(error)}. Choose another name.`);
  }
}

/** The folder above that exists already. */
export function nearestFolder(path: string): string {
  let folder = dirname(resolve(path));
  while (!lookAt(folder) && folder !== dirname(folder)) folder = dirname(folder);
  return folder;
}

/** One name for each file, however it is written: links of folders followed, case and composed letters evened out. */
function trueName(path: string): string {
  const whole = resolve(path);
  const folder = nearestFolder(whole);
  let real = folder;
  try {
    real = realpathSync(folder);
  } catch {
    // A link that leads nowhere stays as it is written.
  }
  const rest = whole.slice(folder.length);
  return join(real, rest || basename(whole))
    .normalize('NFC')
    .toLowerCase();
}
