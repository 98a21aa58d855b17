import { KERNEL_BYTES } from './bytes.ts';
import type { Kernel } from './kernel.ts';

/** What is used of WebAssembly; the engine is compiled without the browser's types. */
interface WebAssemblyApi {
  readonly Memory: new (size: { initial: number; maximum: number }) => { readonly buffer: ArrayBuffer };
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: object };
}

interface Loops {
  readonly blur: Kernel['blur'];
  readonly sum: Kernel['sum'];
}

const PAGE_BYTES = 65536;

/** The compiled loops; `undefined` where there is no WebAssembly, or none with vectors. They hold no state: each kernel has its own memory. */
const compiled = (() => {
  const api = (globalThis as { WebAssembly?: WebAssemblyApi }).WebAssembly;
  if (api === undefined) return undefined;
  try {
    const bytes = Uint8Array.from(atob(KERNEL_BYTES), (c) => c.charCodeAt(0));
    return { api, module: new api.Module(bytes) };
  } catch {
    return undefined;
  }
})();

/** The loops in WebAssembly with vectors of four floats; `undefined` where the machine cannot, or does not grant the memory. */
export function vectorKernel(bytes: number): Kernel | undefined {
  if (compiled === undefined) return undefined;
  const { api, module } = compiled;
  const pages = Math.ceil(bytes / PAGE_BYTES);
  try {
    const memory = new api.Memory({ initial: pages, maximum: pages });
    const loops = new api.Instance(module, { env: { memory } }).exports as Loops;
    return { kind: 'vector', buffer: memory.buffer, blur: loops.blur, sum: loops.sum };
  } catch {
    return undefined;
  }
}
