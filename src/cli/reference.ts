import { join } from 'node:path';
import { writeTogether } from './files.ts';
import { referenceFiles } from './reference/files.ts';

// `npm run reference`: writes docs/ in the folder it is run in.
const files = referenceFiles();
writeTogether(files.map(({ name, text }) => ({ path: join('docs', name), text })));
for (const { name, text } of files)
  console.log(`docs/${name}: ${Math.round(Buffer.byteLength(text) / 1024)} kB`);
