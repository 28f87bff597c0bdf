import { chmodSync, existsSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';

const out = 'dist/cli/leverbook.js';

/**
 * Makes the built file runnable and known to `npx leverbook` in a clone: npm links a package's command where the package
 * is installed, but not in its own working copy.
 */
const runnable: Plugin = {
  name: 'runnable-command',
  writeBundle() {
    chmodSync(out, 0o755);
    if (!existsSync('node_modules')) return;
    const link = 'node_modules/.bin/leverbook';
    rmSync(link, { force: true });
    if (process.platform === 'win32') writeFileSync(`${link}.cmd`, `@node "%~dp0..\\..\\${out}" %*\r\n`);
    else symlinkSync(`../../${out}`, link);
  },
};

/** The command line as one file for Node; its packages stay in node_modules. */
export default defineConfig({
  build: {
    ssr: 'src/cli/leverbook.ts',
    outDir: 'dist/cli',
    target: 'node20',
    emptyOutDir: true,
    rollupOptions: { output: { entryFileNames: 'leverbook.js', banner: '#!/usr/bin/env node' } },
  },
  plugins: [runnable],
});
