import type { CarryEntry } from './carryTable.ts';
import { ballPrecision, ballsUntil, Z95 } from './ballsUntil.ts';
import { isFullSwing, readClub } from './club.ts';
import type { OnCourse } from './file.ts';

/** What of a table's line decides whether its carry is known well enough. */
export type KnownSoFar = Pick<CarryEntry, 'club' | 'swing' | 'n' | 'carryM' | 'sdAlongM' | 'mishitShare'>;

/** How well a carry is known and should be: half widths of its 95-in-100 interval, metres. */
export interface CarryKnown {
  readonly club: string;
  readonly swing: string;
  readonly n: number;
  readonly nowM: number;
  readonly neededM: number;
  /** Further balls until it is known to `neededM`; nought when it is. */
  readonly more: number;
}

/** What to hit next: the balls that save most strokes a round on clubs not known well enough. */
export interface NextBalls {
  readonly club: string;
  readonly swing: string;
  readonly balls: number;
  readonly nowM: number;
  readonly afterM: number;
  /** What knowing the carry that much better saves, by `LOSS_AT_ONE_SPREAD`. */
  readonly strokesARound: number;
}

export interface Enough {
  readonly carries: readonly CarryKnown[];
  /** Absent when every carry is known to what it needs: more balls will not help. */
  readonly next?: NextBalls;
  /** Full swings in one session, at most, and how many of them are left. */
  readonly cap: number;
  readonly left: number;
}

export interface Asked {
  /** What the course adds to a swing's spread. */
  readonly onCourse: OnCourse;
  /** A half width that is wanted of every carry, in place of what the decision needs. */
  readonly withinM?: number;
  readonly who?: Hitter;
  /** Balls hit in this session. */
  readonly hit?: number;
}

export type Hitter = 'junior' | 'adult' | 'senior';

/** Full swings in a session, at most: our assumption, on the careful side. No published limit for golf was found. */
export const SESSION_CAP: { readonly [who in Hitter]: number } = { junior: 50, adult: 100, senior: 60 };

/**
 * Strokes that a carry off by one standard deviation of the good strike on the course costs a shot; by the square of the error elsewhere. Set by our own model of a
 * green with and without water in front, 10 yd short, at four levels (.12, .21, .15, .08).
 */
export const LOSS_AT_ONE_SPREAD = 0.14;
/** Losses under this are a tie, so a carry is known well enough when 19 times in 20 it is off by less than costs this. */
const TIE = 0.02;
/** Shots a round whose outcome hangs on the carry: assumed. From the tee a line and a width matter more. */
const SHOTS_A_ROUND = { iron: 2, long: 1, part: 1 } as const;
const NEXT_BALLS = 10;
/** Which carries are known well enough for a choice of club, how many balls the others need, and which club to hit next. */
export function enough(entries: readonly KnownSoFar[], asked: Asked): Enough {
  const cap = SESSION_CAP[asked.who ?? 'adult'];
  const left = Math.max(0, cap - (asked.hit ?? 0));
  const carries = entries.map((e): CarryKnown => {
    const neededM = asked.withinM ?? Math.sqrt(TIE / LOSS_AT_ONE_SPREAD) * playedSpreadM(e, asked.onCourse);
    const precision = ballPrecision(e.sdAlongM.mean, e.mishitShare.mean);
    const { se } = e.carryM;
    return { ...nameOf(e), n: e.n, nowM: Z95 * se, neededM, more: ballsUntil(neededM, se, precision) };
  });
  const unknown = entries.filter((_, i) => carries[i]!.more > 0);
  const balls = Math.min(NEXT_BALLS, left);
  const next = balls === 0 ? undefined : bestOf(unknown.map((e) => gain(e, balls, asked.onCourse)));
  return { carries, cap, left, ...(next === undefined ? {} : { next }) };
}

export const nameOf = ({ club, swing }: KnownSoFar): { readonly club: string; readonly swing: string } => ({
  club,
  swing,
});

const playedSpreadM = ({ carryM, sdAlongM }: KnownSoFar, { distanceSdPct }: OnCourse): number =>
  Math.hypot(sdAlongM.mean, (distanceSdPct / 100) * carryM.mean);

function shotsARound({ club, swing }: KnownSoFar): number {
  if (!isFullSwing(swing)) return SHOTS_A_ROUND.part;
  const family = readClub(club)?.family;
  return family === 'iron' || family === 'wedge' ? SHOTS_A_ROUND.iron : SHOTS_A_ROUND.long;
}

/** What `balls` more would do for a club. */
export function gain(e: KnownSoFar, balls: number, onCourse: OnCourse): NextBalls {
  const now = 1 / e.carryM.se ** 2;
  const after = now + balls * ballPrecision(e.sdAlongM.mean, e.mishitShare.mean);
  const perSq = LOSS_AT_ONE_SPREAD / playedSpreadM(e, onCourse) ** 2;
  return {
    ...nameOf(e),
    balls,
    nowM: Z95 / Math.sqrt(now),
    afterM: Z95 / Math.sqrt(after),
    strokesARound: shotsARound(e) * perSq * (1 / now - 1 / after),
  };
}

const bestOf = (gains: readonly NextBalls[]): NextBalls | undefined =>
  gains.toSorted((a, b) => b.strokesARound - a.strokesARound)[0];
