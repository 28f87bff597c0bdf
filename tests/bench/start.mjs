// Builds a benchmark as the product is built, so that what is measured is what runs, and starts it in a process of its own.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

const outDir = mkdtempSync(join(process.cwd(), 'node_modules/.bench-'));
try {
  await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: 'tests/bench/run.ts',
      outDir,
      target: 'node20',
      rollupOptions: { output: { format: 'es' } },
    },
  });
  execFileSync(process.execPath, ['--expose-gc', join(outDir, 'run.js')], {
    stdio: 'inherit',
    env: { ...process.env, LEVERBOOK_BENCH: process.argv.slice(2).join(' ') },
  });
} catch (error) {
  process.exitCode = error.status ?? 1;
  if (error.status === undefined) console.error(error);
} finally {
  rmSync(outDir, { recursive: true, force: true });
}
