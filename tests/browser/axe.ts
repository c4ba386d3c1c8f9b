import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe-core finds serious or critical on the page as it stands, or in the part that a selector names: each as its rule, what
 * the rule asks, and the elements.
 */
export async function graveViolations(page: Page, within = 'body'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  const { violations, passes } = await page.evaluate((selector): Promise<AxeResults> => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    return axe.run(selector, { resultTypes: ['violations'] });
  }, within);
  if (passes.length === 0) throw new Error('axe-core looked at nothing.');
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}
