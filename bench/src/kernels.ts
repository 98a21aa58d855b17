import { bestKernel, kernelWork, plainKernel } from '@leeway/engine/testdata/kernelWork';
import { cpuMs, median } from './cpu.ts';

const REPEATS = 15;

/** The hot loops by vectors beside their plain twins, in the same run: name, CPU milliseconds of each, and the ratio. */
export function kernelTimes(): { name: string; vectorMs: number; plainMs: number; ratio: number }[] {
  const vector = kernelWork(bestKernel);
  const plain = kernelWork(plainKernel);
  const time = (run: () => void): number => {
    run();
    return median(Array.from({ length: REPEATS }, () => cpuMs(run)));
  };
  return vector.map(({ name, run }, i) => {
    const vectorMs = time(run);
    const plainMs = time(plain[i]?.run ?? run);
    return { name, vectorMs, plainMs, ratio: plainMs / vectorMs };
  });
}
