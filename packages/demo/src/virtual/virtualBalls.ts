import type { Ball, Random } from '@leeway/engine';
import type { VirtualSwing } from './virtualBag.ts';
import { USUAL, type World } from './world.ts';

/** Balls of one swing as they truly flew, one after another; `seCarryM` and `seDirectionDeg` are errors of measuring them, added here. */
export function virtualBalls(
  swing: VirtualSwing,
  n: number,
  random: Random,
  world: World = USUAL,
  errors: { readonly seCarryM: number; readonly seDirectionDeg: number } = { seCarryM: 0, seDirectionDeg: 0 },
): readonly Ball[] {
  return Array.from({ length: n }, (_, i) => {
    const missed = random.next() < swing.mishitShare;
    const now = 1 + (n > 1 ? world.drift * (i / (n - 1)) : 0);
    const goes = world.otherBalls !== undefined && random.next() < world.otherBalls.share ? world.otherBalls.goes : 1;
    const z = world.goodCarry(random);
    const start = world.start(random);
    const goodDeg = swing.corr * Math.max(-3, Math.min(3, z)) + Math.sqrt(1 - swing.corr ** 2) * start;
    const trueM =
      goes *
      now *
      (missed ? swing.carryM * world.mishitCarry(random, swing.swing === 'full') : swing.carryM + swing.sdCarryM * z);
    const trueDeg = swing.directionDeg + swing.sdDirectionDeg * (missed ? world.mishitDirection * start : goodDeg);
    const carryM = Math.max(0, trueM + errors.seCarryM * random.normal());
    const directionDeg = Math.max(-80, Math.min(80, trueDeg + errors.seDirectionDeg * random.normal()));
    const known = errors.seCarryM > 0 || errors.seDirectionDeg > 0 ? errors : {};
    return { carryM, directionDeg, ...known };
  });
}
