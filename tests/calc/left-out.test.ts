import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { expect, test } from 'vitest';
import { leaveOut } from '../../vite.left-out.ts';
import { answers } from './answers.ts';

test('no function or operator misses what the page leaves out of the cell engine', async () => {
  const outDir = await mkdtemp(join(tmpdir(), 'leverbook-left-out-'));
  try {
    await build({
      configFile: false,
      logLevel: 'error',
      build: {
        ssr: 'tests/calc/answers.ts',
        outDir,
        rollupOptions: { output: { entryFileNames: 'built.mjs' } },
      },
      ssr: { noExternal: true },
      plugins: [leaveOut('hyperformula', 'numfmt')],
    });
    const built = (await import(pathToFileURL(join(outDir, 'built.mjs')).href)) as {
      answers: typeof answers;
    };
    const whole = answers();
    expect(whole.length).toBeGreaterThan(10_000);
    expect(built.answers()).toEqual(whole);
  } finally {
    await rm(outDir, { recursive: true, force: true });
  }
});
