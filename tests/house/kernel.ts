import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const house = fileURLToPath(new URL('../../', import.meta.url));

/** Where the compiled kernel stands as a module, from the house on. */
export const kernelModule = 'src/core/dynamics/kernel/binary.ts';

/**
 * Compiles src/core/dynamics/kernel/assembly to WebAssembly. The same sources and compiler give the same bytes. Vectors
 * are exchanged between the kernel's own files only, which is what the warning that is turned off is about.
 *
 * @throws Error with the compiler's words when the sources do not compile
 */
export async function compileKernel(): Promise<Uint8Array> {
  let binary: Uint8Array | undefined;
  const { error, stderr } = await asc.main(
    [
      'src/core/dynamics/kernel/assembly/kernel.ts',
      ...['--baseDir', house, '--outFile', 'kernel.wasm', '--runtime', 'stub', '--use', 'abort='],
      ...['-O3', '--converge', '--noAssert', '--enable', 'simd', '--disableWarning', '112'],
    ],
    {
      writeFile: (_name: string, contents: Uint8Array | string) => {
        if (typeof contents !== 'string') binary = contents;
      },
    },
  );
  if (error || binary === undefined) throw new Error(`the kernel does not compile: ${stderr.toString()}`);
  return binary;
}

/** The text of the module that carries the kernel. */
export const moduleOf = (binary: Uint8Array): string =>
  '/** assembly/ compiled to WebAssembly, in base 64; written by `npm run kernel`, never by hand. */\n' +
  `export const binary =\n  '${Buffer.from(binary).toString('base64')}';\n`;
