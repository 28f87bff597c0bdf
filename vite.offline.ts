import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type Plugin, transformWithOxc } from 'vite';

const source = join(import.meta.dirname, 'src/app/offline/service-worker.ts');
const name = 'service-worker.js';

/** Every browser that can keep files reads the smaller kind of font. */
const left = /\.woff$|\.map$/;

/** Writes the service worker beside a built page, with the list of its files. */
export async function writeServiceWorker(built: string): Promise<void> {
  const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');
  const files = Object.fromEntries(
    readdirSync(built, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name !== name && !left.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((file): [string, string] => {
        const path = relative(built, file).replaceAll('\\', '/');
        // The page stands under its folder's address: a host may send those who ask for index.html there.
        return [path === 'index.html' ? './' : path, sha256(readFileSync(file))];
      }),
  );
  const { code } = await transformWithOxc(readFileSync(source, 'utf8'), source, { sourcemap: false });
  const list = JSON.stringify(files, null, 1);
  const build = sha256(list + code).slice(0, 16);
  writeFileSync(
    join(built, name),
    `const BUILD = '${build}';\nconst FILES = ${list};\n${code.replace(/^export\s*\{\s*\};?\s*$/m, '')}`,
  );
}

/** The service worker that keeps the built page's files. While developing there is none. */
export const offline: Plugin = {
  name: 'offline',
  apply: 'build',
  writeBundle: { order: 'post', sequential: true, handler: ({ dir }) => writeServiceWorker(dir!) },
};
