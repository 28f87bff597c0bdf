import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';

import { leaveOut } from './vite.left-out.ts';
import { offline } from './vite.offline.ts';

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

/**
 * What the built page may do: run and load its own files, nothing else. Scripts and styles have no exceptions; pictures
 * may also be data and blobs (icons in style sheets, exported drawings).
 */
export const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the built page. While developing, the server's own inline parts would break it. */
const contentSecurityPolicy: Plugin = {
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
      injectTo: 'head-prepend',
    },
  ],
};

export default defineConfig({
  base: './',
  publicDir: 'src/app/public',
  define: { LEVERBOOK_VERSION: JSON.stringify(version) },
  plugins: [contentSecurityPolicy, leaveOut('handsontable'), offline],
  worker: { format: 'es', plugins: () => [leaveOut('hyperformula', 'numfmt', 'zod')] },
  // The page states the policy itself; workers have only what comes with their file.
  preview: { headers: { 'Content-Security-Policy': policy } },
  build: {
    outDir: 'dist/app',
    emptyOutDir: true,
    target: 'es2022',
    // Browsers from the end of 2023 on. For older ones each rule about a corner would be written once more for every
    // language that runs from right to left, and the grid's cells would be slow to draw.
    cssTarget: ['chrome120', 'edge120', 'firefox121', 'safari17'],
    // Book files, tables and pictures are fetched, never carried inside a script.
    assetsInlineLimit: (path) => (/\.(json|csv|png)$/.test(path) ? false : undefined),
    chunkSizeWarningLimit: 1200,
  },
});
