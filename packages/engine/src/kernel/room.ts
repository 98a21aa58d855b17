import type { Kernel } from './kernel.ts';
import { plainKernel } from './plainKernel.ts';
import { vectorKernel } from './vectorKernel.ts';

/** Every piece of a room begins at a multiple of so many bytes. */
const ALIGNED = 16;

/** Makes a kernel with a room of at least so many bytes. */
export type MakeKernel = (bytes: number) => Kernel;

/** The kernel in WebAssembly where the machine has it and grants the memory, else its plain twin. */
export const bestKernel: MakeKernel = (bytes) => vectorKernel(bytes) ?? plainKernel(bytes);

/** Bytes of a room that a piece of so many floats takes. */
export const bytesOf = (floats: number): number => Math.ceil((4 * floats) / ALIGNED) * ALIGNED;

/** A kernel and the memory that it works in, handed out once, piece by piece. Whoever makes it says beforehand how much will be taken. */
export class Room {
  readonly kernel: Kernel;
  // nothing lies at address nought, which stands for "none"
  private next = ALIGNED;

  constructor(bytes: number, make: MakeKernel = bestKernel) {
    this.kernel = make(bytes + ALIGNED);
  }

  /** A piece for so many floats, all nought; its address is its `byteOffset`. */
  floats(count: number): Float32Array<ArrayBuffer> {
    const at = this.next;
    this.next += bytesOf(count);
    return new Float32Array(this.kernel.buffer, at, count);
  }
}
