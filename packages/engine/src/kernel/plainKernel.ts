import type { Kernel } from './kernel.ts';
import { plainBlur } from './plainBlur.ts';
import { plainSum } from './plainSum.ts';

/** The loops in TypeScript: the same figures to within rounding, for machines without WebAssembly, and to check the other by. */
export function plainKernel(bytes: number): Kernel {
  const buffer = new ArrayBuffer(Math.ceil(bytes / 4) * 4);
  const floats = new Float32Array(buffer);
  const ints = new Int32Array(buffer);
  return {
    kind: 'plain',
    buffer,
    blur: (...args) => plainBlur(floats, ...args),
    sum: (...args) => plainSum(floats, ints, ...args),
  };
}
