import type { Fault } from '@leeway/contract';
import { type CarryEntry, lengthM, YARD_M } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { CAP_BYTES, readTextCapped } from './files.ts';

/** Lengths of a round of par 72 for one who drives 230 yd, yards: assumed. They grow and shrink with the player's longest carry. */
const USUAL_YD = [345, 490, 160, 395, 370, 180, 520, 410, 330, 385, 150, 405, 500, 355, 170, 420, 375, 505];
const USUAL_CARRY_M = 205 * YARD_M;

/** Lengths of the holes played, and how they are called. */
export interface HoleLengths {
  readonly lengthsM: readonly number[];
  readonly words: string;
}

export function usualLengths(entries: readonly CarryEntry[]): HoleLengths {
  const longestM = Math.max(...entries.map((e) => e.carryM.mean));
  const scale = Math.min(1.15, Math.max(0.6, longestM / USUAL_CARRY_M));
  return {
    lengthsM: USUAL_YD.map((yd) => yd * YARD_M * scale),
    words: 'usual holes (--ground FILE: on yours)',
  };
}

/** The holes of a mapped course; its faults are told by `leeway check`, only a refusal here. */
export async function mappedLengths(path: string): Promise<HoleLengths | readonly Fault[]> {
  const text = await readTextCapped(path, CAP_BYTES.ground);
  const ground = text.value === undefined ? undefined : readGround(text.value, path);
  const holes = ground?.value?.holes ?? [];
  if (holes.length === 0) return [...text.faults, ...(ground?.faults ?? [])].filter((f) => f.level === 'refused');
  return { lengthsM: holes.map((h) => lengthM(h.line)), words: `the ${holes.length} holes of ${path}` };
}
