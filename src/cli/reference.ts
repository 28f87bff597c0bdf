import { join } from 'node:path';
import { referenceFiles } from './reference/reference-files.ts';
import { writeTogether } from './write-together.ts';

// `npm run reference`: writes docs/ in the folder it is run in.
const files = referenceFiles();
writeTogether(
  files.map(({ name, text }) => ({ path: join('docs', name), option: 'npm run reference', text })),
  { replace: true },
);
for (const { name, text } of files)
  console.log(`docs/${name}: ${Math.round(Buffer.byteLength(text) / 1024)} kB`);
