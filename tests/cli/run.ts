import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

export const root = join(import.meta.dirname, '..', '..');
const command = join(root, 'dist/cli/leverbook.js');

/** Builds the command from the source that is tested. */
export const buildCommand = () =>
  build({ root, configFile: join(root, 'vite.cli.config.ts'), logLevel: 'error' });

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built command as a user would, in a process of its own. */
export function leverbook(args: readonly string[], input?: string): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    ...(input === undefined ? { stdio: ['ignore', 'pipe', 'pipe'] } : { input }),
  });
  return { code: status, out: stdout, err: stderr };
}

export const folder = (): string => mkdtempSync(join(tmpdir(), 'leverbook-'));

/** A file of the given text or bytes in a fresh folder; answers its path. */
export function file(name: string, content: string | Uint8Array): string {
  const path = join(folder(), name);
  writeFileSync(path, content);
  return path;
}
