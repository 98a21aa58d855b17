import {
  LEVEL_BYTES,
  LEVEL_COLUMNS,
  LEVEL_DRY,
  LEVEL_OUT,
  LEVEL_PER_M,
  LEVEL_ROWS,
  LEVEL_U0,
  LEVEL_V0,
  LEVEL_WET,
} from '../kernel/layout.ts';
import type { Room } from '../kernel/room.ts';
import type { Grid } from './blur.ts';

/** Floats that a level's record takes. */
export const LEVEL_FLOATS = LEVEL_BYTES / 4;

/** One width of a run class, as the kernel reads it; gives its address. `out` and `wet` only where they occur. */
export function writeLevel(
  room: Room,
  grid: Grid,
  dry: Float32Array,
  out: Float32Array | undefined,
  wet: Float32Array | undefined,
): number {
  const record = room.floats(LEVEL_FLOATS);
  const ints = new Int32Array(record.buffer, record.byteOffset, LEVEL_FLOATS);
  record[LEVEL_U0 / 4] = grid.u0;
  record[LEVEL_V0 / 4] = grid.v0;
  record[LEVEL_PER_M / 4] = 1 / grid.stepM;
  ints[LEVEL_COLUMNS / 4] = grid.columns;
  ints[LEVEL_ROWS / 4] = grid.rows;
  ints[LEVEL_DRY / 4] = dry.byteOffset;
  ints[LEVEL_OUT / 4] = out?.byteOffset ?? 0;
  ints[LEVEL_WET / 4] = wet?.byteOffset ?? 0;
  return record.byteOffset;
}
