import type { HoleDocument } from '@leeway/contract';
import type { DrawAsk } from './asks.ts';

/** The shot that a hole is opened with: where that is wanted, the first one that plays to the flag. */
export const openingShot = ({ shots }: HoleDocument, atFlag: boolean): number =>
  atFlag
    ? Math.max(
        0,
        shots.findIndex((shot) => shot.atFlag !== undefined),
      )
    : 0;

/** How a sheet is drawn, whatever it shows. */
export type SheetFormat = Omit<DrawAsk, 'shot' | 'unchosen'>;

/** The sheet of a shot. On a wide page a tee shot that does not go for the flag is shown on the whole hole, so that its flag is there to be dragged. */
export function sheetOf({ shots }: HoleDocument, shot: number, format: SheetFormat): DrawAsk {
  const wholeHole = !format.phone && shot === 0 && shots[0]?.atFlag === undefined;
  return wholeHole ? format : { shot, ...format };
}
