import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const SOURCE = fileURLToPath(new URL('../assembly/kernel.ts', import.meta.url));
const FLAGS = '--enable simd --runtime stub --noAssert -O3 --importMemory --use abort='.split(' ');
const LINE = 100;

/** The kernel's source compiled to WebAssembly. Throws with the compiler's messages. */
function compile(): Buffer {
  // by its command: its types would bring their own idea of an array
  const compiler = fileURLToPath(import.meta.resolve('assemblyscript/bin/asc.js'));
  const folder = mkdtempSync(join(tmpdir(), 'kernel-'));
  try {
    const file = join(folder, 'kernel.wasm');
    const { status, stderr } = spawnSync(process.execPath, [compiler, SOURCE, ...FLAGS, '--outFile', file]);
    if (status !== 0) throw new Error(`the kernel does not compile\n${stderr.toString()}`);
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The page that holds the compiled kernel. */
export function bytesPage(): string {
  const lines = compile()
    .toString('base64')
    .match(new RegExp(`.{1,${LINE}}`, 'g'));
  const quoted = (lines ?? []).map((line) => `  '${line}'`).join(' +\n');
  return [
    '/** The compiled kernel, base64. Made from `assembly` by `npm run make -w @leeway/engine`; not edited by hand. */',
    `export const KERNEL_BYTES =\n${quoted};\n`,
  ].join('\n');
}
