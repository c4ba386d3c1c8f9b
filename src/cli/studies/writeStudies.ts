import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseScene } from '../../scene/index.ts';
import { easementPicture } from './easementPicture.ts';
import { withEasementTables } from './easementStudy.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

const parsed = parseScene(readFileSync(at('scenes/10-rushbeck-throat.json'), 'utf8'));
if (!parsed.ok) throw new Error('The scene of the easement study is not sound.');
const page = at('docs/studies/easement.md');
writeFileSync(page, withEasementTables(readFileSync(page, 'utf8'), parsed.scene));
writeFileSync(at('docs/pictures/easement.svg'), easementPicture(parsed.scene));
