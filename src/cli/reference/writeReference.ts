import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { withOutputs } from './referenceExamples.ts';
import { referenceFiles } from './referenceFiles.ts';

// `npm run schema`: writes what of docs/reference is made from the code: JSON Schemas, the table of defaults, what the examples print.
const reference = new URL('../../../docs/reference/', import.meta.url);
for (const [name, text] of Object.entries(referenceFiles())) writeFileSync(new URL(name, reference), text);
const core = new URL('core.md', reference);
writeFileSync(core, withOutputs(readFileSync(core, 'utf8'), fileURLToPath(new URL('../../../', import.meta.url))));
