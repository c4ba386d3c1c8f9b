import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractRules from 'dependency-cruiser/config-utl/extract-depcruise-config';
import extractTsConfig from 'dependency-cruiser/config-utl/extract-ts-config';

/** Every TypeScript file below `folder` of `root`, with forward slashes, from `folder` on. */
export function sourceFiles(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

export interface Cruised {
  readonly files: readonly string[];
  /** Files on disk that were not read: a rule that reads nothing passes everything. */
  readonly unread: readonly string[];
  readonly violations: readonly { readonly rule: string; readonly from: string; readonly to: string }[];
}

/** Reads every import below `<root>/src` against the rules of the house at `house`. */
export async function cruiseSource(root: string, house: string): Promise<Cruised> {
  const rules = await extractRules(join(house, '.dependency-cruiser.cjs'));
  const tsConfig = extractTsConfig(join(house, 'tsconfig.json'));
  const options = { ...rules.options, ruleSet: { forbidden: rules.forbidden ?? [] }, validate: true, baseDir: root };
  const { output } = await cruise(['src'], options, {}, { tsConfig });
  const { modules, summary } = output as ICruiseResult;
  const read = new Set(modules.map((module) => module.source));
  const files = sourceFiles(root, 'src');
  return {
    files,
    unread: files.filter((file) => !read.has(file)),
    violations: summary.violations.map(({ rule, from, to }) => ({ rule: rule.name, from, to })),
  };
}
