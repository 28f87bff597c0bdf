import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { madeFiles } from './books.ts';

// `npm run samples`: writes the sample books and their CSV files anew, from the templates and the seeded generators.
for (const { path, text } of madeFiles()) {
  const file = join('sample-books', path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  console.log(`${file}: ${Math.round(Buffer.byteLength(text) / 1024)} kB`);
}
