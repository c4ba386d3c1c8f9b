import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { compileKernel, kernelModule, moduleOf } from './kernel.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));

describe('the compiled kernel of the train solver', () => {
  it('is what its sources compile to', async () => {
    const binary = await compileKernel();
    expect([...binary.slice(0, 4)]).toEqual([0, 0x61, 0x73, 0x6d]);
    // Not compared as text: on failure a page of base 64 says nothing. `npm run kernel` writes it anew.
    expect(readFileSync(`${house}${kernelModule}`, 'utf8') === moduleOf(binary)).toBe(true);
  });

  it('asks nothing of its host', async () => {
    const module = new WebAssembly.Module((await compileKernel()) as BufferSource);
    expect(WebAssembly.Module.imports(module)).toEqual([]);
  });
});
