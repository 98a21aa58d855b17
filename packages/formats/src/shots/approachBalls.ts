import type { Fault, ShotRow } from '@leeway/contract';
import { type Ball, RAD_PER_DEG, type Unseen, type Window, YARD_M } from '@leeway/engine';
import { ballOf } from './ballOf.ts';
import type { Approach } from './readApproaches.ts';
import { onReferenceDay } from './referenceDay.ts';

/** A green whose edges nobody gave: this deep and wide, the flag in its middle. Our assumption. */
const GREEN_M = 28 * YARD_M;
/** A mark is paced from the flag and the flag's distance read off: each good to about this, and a hundredth of the length. */
const PACED_M = YARD_M;
const READ_SHARE = 0.01;
/** Where not every approach was logged, those that were may be the better ones: each counts for this much. */
const SOME_LOGGED = 0.5;

/** What approaches say of a swing: balls, and balls of which only the side that they missed on is known. */
export interface ApproachBalls {
  readonly balls: readonly Ball[];
  readonly unseen: readonly Unseen[];
}

/**
 * With every approach of the rounds logged, marks are balls like others and misses count by the chance of their side. Otherwise a mark counts only as one among those that
 * the green shows, and for half; misses, of which an unknown number is missing, do not count.
 */
export function approachBalls(
  approaches: readonly Approach[],
  agesDays: readonly (number | undefined)[],
  loftDeg: number,
  allLogged: boolean,
): ApproachBalls {
  const balls: Ball[] = [];
  const unseen: Unseen[] = [];
  approaches.forEach((a, i) => {
    const { mark = { pastM: 0, rightM: 0 }, toFlagM, missed } = a;
    const carryM = Math.hypot(toFlagM + mark.pastM, mark.rightM);
    const row: ShotRow = { ...a, carryM, sideM: mark.rightM };
    const moved = onReferenceDay(row, loftDeg);
    const window = scaled(windowOf(a), moved.carryM / carryM);
    const age = agesDays[i] === undefined ? {} : { ageDays: agesDays[i] };
    if (missed !== undefined) {
      if (allLogged) unseen.push({ window, side: missed === 'sand' ? 'away' : missed, ...age });
      return;
    }
    const seM = Math.hypot(PACED_M, READ_SHARE * carryM);
    balls.push({
      ...ballOf({
        ...moved,
        seCarryM: Math.hypot(moved.seCarryM ?? 0, seM),
        seDirectionDeg: Math.hypot(moved.seDirectionDeg ?? 0, PACED_M / carryM / RAD_PER_DEG),
      }),
      onCourse: true,
      ...age,
      ...(allLogged ? {} : { seenIn: window, counts: SOME_LOGGED }),
    });
  });
  return { balls, unseen };
}

function windowOf({ toFlagM, green }: Approach): Window {
  const { frontM, backM, widthM } = green ?? {
    frontM: toFlagM - GREEN_M / 2,
    backM: toFlagM + GREEN_M / 2,
    widthM: GREEN_M,
  };
  const halfDeg = Math.atan2(widthM / 2, toFlagM) / RAD_PER_DEG;
  return { shortM: frontM, longM: backM, leftDeg: -halfDeg, rightDeg: halfDeg };
}

const scaled = (w: Window, x: number): Window => ({ ...w, shortM: w.shortM * x, longM: w.longM * x });

/** What is taken for granted of approaches, each told once a file. */
export function approachNotes(approaches: readonly Approach[], allLogged: boolean): readonly Fault[] {
  return [...Map.groupBy(approaches, (a) => a.file)].flatMap(([file, own]): readonly Fault[] => {
    const notes: Fault[] = [];
    const misses = own.filter((a) => a.missed !== undefined).length;
    if (!allLogged)
      notes.push({
        code: 'some-logged',
        level: 'note',
        file,
        found: `${own.length} approaches, ${misses} of them misses`,
        expected: '--all-logged, if every approach of these rounds is there',
        done: 'marks count for half, misses not at all',
      });
    const without = own.filter((a) => a.green === undefined).length;
    if (without > 0)
      notes.push({
        code: 'green-assumed',
        level: 'note',
        file,
        found: `${without} approaches without front and back of the green`,
        expected: 'front, back and width',
        done: 'a green 28 yd deep and wide is assumed about the flag',
      });
    return notes;
  });
}
