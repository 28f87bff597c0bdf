import { chmodSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vite';

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

/** The command line as one file for Node; its packages stay in node_modules. */
export default defineConfig({
  define: { LEVERBOOK_VERSION: JSON.stringify(version) },
  build: {
    ssr: 'src/cli/leverbook.ts',
    outDir: 'dist/cli',
    target: 'node20',
    emptyOutDir: true,
    rollupOptions: { output: { entryFileNames: 'leverbook.js', banner: '#!/usr/bin/env node' } },
  },
  plugins: [
    {
      name: 'runnable-command',
      writeBundle: ({ dir }) => chmodSync(`${dir}/leverbook.js`, 0o755),
    },
  ],
});
