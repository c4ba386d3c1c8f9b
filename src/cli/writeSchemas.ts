import { writeFileSync } from 'node:fs';
import { referenceSchemas } from './referenceSchemas.ts';

// `npm run schema`: writes the JSON Schemas of docs/reference from the code that checks and writes those documents.
for (const [name, text] of Object.entries(referenceSchemas())) {
  writeFileSync(new URL(`../../docs/reference/${name}`, import.meta.url), text);
}
