import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { riskTitle } from '../../src/core/findings/index.ts';
import { risks } from '../../src/core/risks/index.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const pages = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(house, 'docs'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => join('docs', name)),
];

it.each(pages)('%s links to nothing that is not there', (page) => {
  const text = readFileSync(join(house, page), 'utf8');
  const targets = [...text.matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g)].map(([, target]) => target);
  expect(targets.filter((target) => !existsSync(join(house, dirname(page), target)))).toEqual([]);
});

it('the guide says of every risk what its finding means', () => {
  const text = readFileSync(join(house, 'docs/guide/findings.md'), 'utf8');
  const told = [...text.matchAll(/^\*\*.+ \((.+)\)\.\*\*/gm)].map(([, row]) => row);
  expect(told.sort()).toEqual(risks.map(({ id }) => riskTitle(id)).sort());
});
