/** What `work` takes on the machine that the limits are stated for, with nothing else running, ms. */
const QUIET_MS = 50;
/** Beyond this a machine is too busy for a limit to say anything. */
const MOST = 2;
const ROUNDS = 9;

/** Arithmetic and memory in the mixture of the pages' own work: sorting, and sums over a table that does not fit the nearest cache. */
function work(): number {
  const table = Float64Array.from({ length: 200_000 }, (_, i) => Math.sin(i * 12.9898) * 43758.5453);
  table.sort();
  let sum = 0;
  for (let i = 0; i < 1_000_000; i++) sum += table[(i * 7919) % table.length]! * 1e-6;
  return sum;
}

/**
 * How many times slower this machine is now than it is with nothing else running, 1 to 2: what else runs on a shared machine makes the clock go on as it does on
 * a slower one. By the clock, the middle of some rounds.
 */
export function slownessNow(): number {
  const took = Array.from({ length: ROUNDS }, () => {
    const before = performance.now();
    if (Number.isNaN(work())) throw new Error('the work of measuring went wrong');
    return performance.now() - before;
  }).toSorted((a, b) => a - b);
  return Math.min(MOST, Math.max(1, took[ROUNDS >> 1]! / QUIET_MS));
}
