// The arrows of the house, as `npm run check:imports` runs them.
import { fileURLToPath } from 'node:url';
import { cruiseSource } from './cruise.ts';

const house = fileURLToPath(new URL('../../', import.meta.url)).replace(/[\\/]$/, '');
const { files, unread, violations } = await cruiseSource(house, house);

for (const { rule, from, to } of violations) console.error(`${rule}: ${from} -> ${to}`);
for (const file of unread) console.error(`not read: ${file}`);
if (files.length === 0) console.error('no source file was found');
console.log(
  `${files.length - unread.length} of ${files.length} source files read, ${violations.length} imports against the rules`,
);
process.exitCode = files.length > 0 && unread.length === 0 && violations.length === 0 ? 0 : 1;
