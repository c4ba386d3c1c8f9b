/** `npm run kernel`: compiles the kernel of the train solver and writes the module that carries it. */
import { writeFileSync } from 'node:fs';
import { compileKernel, kernelModule, moduleOf } from './kernel.ts';

compileKernel().then((binary) => {
  writeFileSync(new URL(`../../${kernelModule}`, import.meta.url), moduleOf(binary));
  console.log(`${kernelModule}: ${binary.length} bytes`);
});
