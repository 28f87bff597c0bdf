import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

export const root = join(import.meta.dirname, '..', '..');
/** Where the command was built for this run (built.ts), or else a folder of this process; inside the project, where the packages are found. */
const ready = process.env.LEVERBOOK_COMMAND;
const built = ready ?? join(root, 'node_modules', `.leverbook-test-${process.pid}`);

/** Builds the command from the source that is tested, where no run did so before; answers what takes it away again. */
export async function buildCommand(outDir = built): Promise<() => void> {
  if (outDir === ready) return () => {};
  const configFile = join(root, 'vite.cli.config.ts');
  await build({ root, configFile, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  return () => rmSync(outDir, { recursive: true, force: true });
}

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** The built command's file. */
export const command = (): string => join(built, 'leverbook.js');

/** Runs the built command as a user would, in a process of its own. */
export function leverbook(args: readonly string[], input?: string, env: NodeJS.ProcessEnv = {}): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command(), ...args], {
    cwd: root,
    env: { ...process.env, ...env },
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
