import {
  bearingRad,
  distanceM,
  type HoleGround,
  insidePolygon,
  offsetOf,
  placeAt,
  type PlanePoint,
  type Surface,
} from '@leeway/engine';
import { FINISHES, type TypedHole, type TypedStroke } from './typed.ts';

/** How far a club goes, ball to rest. */
export interface Reach {
  readonly club: string;
  readonly toM: number;
}

/** A stroke of a hole, placed. */
export interface GuessedStroke {
  readonly club?: string;
  readonly from: PlanePoint;
  readonly lie: 'tee' | 'fairway' | 'rough' | 'bunker' | 'recovery' | 'green';
  readonly finish: PlanePoint | 'holed';
  readonly penaltyStrokes: number;
}

/** Off the green and this near it, a stroke is a chip or pitch: no club is guessed. */
const SHORT_M = 40 * 0.9144;
const STEP_M = 2;
const FARTHEST_M = 80;
const BEARINGS = 32;
/** A first putt is left this far from the flag, and a share of the stroke before it: our guess. */
const PUTT_M = 2;
const PUTT_SHARE = 0.05;
const LATER_PUTTS_M = [0.5, 1.2];

/** What lies on top at a place: rough where nothing does. */
export const surfaceAt = (ground: HoleGround, p: PlanePoint): Surface =>
  ground.areas.findLast(({ polygon }) => insidePolygon(p, polygon))?.surface ?? 'rough';

/**
 * Places what was typed: a club goes as far as it goes, along the line of play, to the nearest ground of the kind that was said and on the side that was said. A club that
 * was not typed is the longest from the tee, else the one that reaches; a drop is beside the water, a ball out is played again.
 */
export function placedHole(ground: HoleGround, typed: TypedHole, reaches: readonly Reach[]): readonly GuessedStroke[] {
  const strokes: GuessedStroke[] = [];
  let [at, lie]: [PlanePoint, GuessedStroke['lie']] = [ground.ball, 'tee'];
  for (const stroke of typed.strokes) {
    const club = stroke.club ?? clubFor(ground, at, lie, reaches);
    const target = targetOf(ground, at, stroke, reaches.find((r) => r.club === club)?.toM);
    const finish = stroke.to === 'h' ? 'holed' : restOf(ground, at, target, stroke);
    const penalty = stroke.to === 'w' || stroke.to === 'o';
    strokes.push({ ...(club === undefined ? {} : { club }), from: at, lie, finish, penaltyStrokes: penalty ? 1 : 0 });
    if (finish === 'holed') return strokes;
    if (stroke.to === 'o') continue;
    at = stroke.to === 'w' ? dropOf(ground, at, finish) : finish;
    lie = LIES[stroke.to];
  }
  for (let putt = typed.putts; putt > 0; putt--) {
    const next: PlanePoint = {
      eastM: ground.flag.eastM + (LATER_PUTTS_M[putt - 2] ?? 1.5),
      northM: ground.flag.northM,
    };
    const finish = putt === 1 ? 'holed' : next;
    strokes.push({ from: at, lie: 'green', finish, penaltyStrokes: 0 });
    at = next;
  }
  return strokes;
}

const LIES: { readonly [K in TypedStroke['to']]: GuessedStroke['lie'] } = {
  f: 'fairway',
  g: 'green',
  r: 'rough',
  s: 'bunker',
  t: 'recovery',
  w: 'rough',
  o: 'rough',
  h: 'green',
};

function clubFor(
  ground: HoleGround,
  at: PlanePoint,
  lie: GuessedStroke['lie'],
  reaches: readonly Reach[],
): string | undefined {
  const toFlagM = distanceM(at, ground.flag);
  if (toFlagM <= SHORT_M && lie !== 'tee') return undefined;
  const usable = lie === 'tee' ? reaches : reaches.filter((r) => !/driver/i.test(r.club));
  const byFit = usable.toSorted((a, b) => Math.abs(a.toM - toFlagM) - Math.abs(b.toM - toFlagM));
  return byFit[0]?.club;
}

/** Down the line of play by as much as the club goes, the flag at the farthest. */
function targetOf({ line, flag }: HoleGround, at: PlanePoint, { to }: TypedStroke, reachM = Infinity): PlanePoint {
  const toFlagM = distanceM(at, flag);
  if (to === 'g') return placeAt(flag, bearingRad(flag, at), PUTT_M + PUTT_SHARE * toFlagM);
  if (reachM >= toFlagM) return flag;
  const ahead = line.filter((p) => distanceM(p, flag) < toFlagM - 1);
  for (const corner of [...ahead.slice(0, -1), flag]) {
    const goesM = distanceM(at, corner);
    if (goesM >= reachM || corner === flag) return placeAt(at, bearingRad(at, corner), Math.min(reachM, goesM));
  }
  return flag;
}

function restOf(ground: HoleGround, from: PlanePoint, target: PlanePoint, { to, side }: TypedStroke): PlanePoint {
  const wanted = to === 'h' ? 'green' : FINISHES[to];
  const up = bearingRad(from, target);
  const aimed = distanceM(from, target);
  const fits = (p: PlanePoint): boolean => {
    const { alongM, acrossM } = offsetOf(p, from, up);
    const onSide =
      side === undefined ||
      {
        left: acrossM < -STEP_M,
        right: acrossM > STEP_M,
        short: alongM < aimed - STEP_M,
        long: alongM > aimed + STEP_M,
      }[side];
    return onSide && alongM > 0 && surfaceAt(ground, p) === wanted;
  };
  if (fits(target)) return target;
  for (let away = STEP_M; away <= FARTHEST_M; away += STEP_M)
    for (let k = 0; k < BEARINGS; k++) {
      const p = placeAt(target, up + (2 * Math.PI * k) / BEARINGS, away);
      if (fits(p)) return p;
    }
  return target;
}

/** The last dry ground on the way to where the ball went in. */
function dropOf(ground: HoleGround, from: PlanePoint, into: PlanePoint): PlanePoint {
  const up = bearingRad(from, into);
  for (let alongM = distanceM(from, into); alongM > STEP_M; alongM -= STEP_M) {
    const p = placeAt(from, up, alongM);
    if (surfaceAt(ground, p) !== 'penalty') return placeAt(from, up, Math.max(1, alongM - STEP_M));
  }
  return from;
}
