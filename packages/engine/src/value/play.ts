import type { Random } from '../math/random.ts';
import { shortSided } from './arsenal.ts';
import type { Field } from './field.ts';
import type { Policy } from './policy.ts';
import { playedOf, runOn, runWay } from './price.ts';
import { cellAt, FAIRWAY, GREEN, TEE } from './raster.ts';
import type { Dropped } from './relief.ts';
import type { Found } from './search.ts';
import type { Solving } from './sweep.ts';
import { unplayable, mayBeUnplayable } from './unplayable.ts';

/** A hole that goes on for longer is given up. */
const MOST_STROKES = 60;

/** A state of the play frame, with V there where it is known. */
export interface Place {
  readonly u: number;
  readonly v: number;
  readonly lie: number;
  readonly value?: number;
}

/** A hole played to the green: strokes and penalties until then, and the putts that are expected from there. */
export interface PlayedHole {
  readonly strokes: number;
  readonly putts: number;
}

/**
 * Plays a hole ball by ball on the painted ground by a policy: every ball drawn from its pattern, run out, found, lifted or replayed. `first` is
 * played once, from the first state.
 */
export function playHole(
  field: Field,
  solved: Solving,
  policy: Policy,
  from: Place,
  random: Random,
  first?: Found,
): PlayedHole {
  let here = from;
  let strokes = 0;
  while (strokes < MOST_STROKES) {
    const found = (strokes === 0 ? first : undefined) ?? policy.at(here.lie, here.u, here.v);
    const dropped = relieved(field, here, found, strokes === 0 && first !== undefined);
    if (dropped !== undefined) {
      strokes += dropped.penaltyStrokes;
      if (dropped.lie === GREEN) return { strokes, putts: field.puttsFrom(dropped.u, dropped.v) };
      here = dropped;
      continue;
    }
    if (found === undefined) break;
    strokes++;
    const next = ballFrom(field, solved, here, found, random);
    strokes += next.penaltyStrokes;
    if (next.lie === GREEN) return { strokes, putts: field.puttsFrom(next.u, next.v) };
    here = next;
  }
  return { strokes: Math.max(strokes, MOST_STROKES), putts: 0 };
}

/** The relief of Rule 19, where it costs less than the stroke that would be played. */
function relieved(field: Field, here: Place, found: Found | undefined, bound: boolean): Dropped | undefined {
  if (bound) return undefined;
  const strokes = found?.strokes ?? Infinity;
  if (!mayBeUnplayable(field, here.lie, here.u, here.v, strokes)) return undefined;
  const dropped = unplayable(field, here.lie, here.u, here.v);
  return dropped !== undefined && dropped.penaltyStrokes + dropped.strokes < strokes ? dropped : undefined;
}

/** One ball: where it is played from next, or its place on the green, and the penalty on the way. */
function ballFrom(
  field: Field,
  solved: Solving,
  here: Place,
  { weapon, bearing }: Found,
  random: Random,
): Place & { readonly penaltyStrokes: number } {
  const { raster } = field;
  const played = playedOf(here, shortSided(weapon, field.shortSide.at(here.u, here.v)), bearing);
  const { parts } = played.pattern;
  let left = random.next();
  const drawn = parts.findIndex((p) => (left -= p.weight) < 0);
  const k = drawn < 0 ? 0 : drawn;
  const part = parts[k]!;
  const x = random.normal();
  const y = part.corr * x + Math.sqrt(Math.max(0, 1 - part.corr * part.corr)) * random.normal();
  const [along, across] = [part.alongM + part.sdAlongM * x, part.acrossM + part.sdAcrossM * y];
  const [sin, cos] = [Math.sin(bearing), Math.cos(bearing)];
  let u = here.u + along * sin + across * cos;
  let v = here.v + along * cos - across * sin;
  const runM = runOn(field, played, k, cellAt(raster, u, v));
  let [wayU, wayV] = [u - here.u, v - here.v];
  if (runM > 0) {
    [wayU, wayV] = runWay(played, k, u - here.u, v - here.v, sin, cos);
    u += runM * wayU;
    v += runM * wayV;
  }
  if (field.greenSlope !== undefined && field.isGreen(u, v)) {
    [u, v] = field.greenSlope.rest(u, v, (a, b) => field.isGreen(a, b));
  }
  const code = raster.surface[cellAt(raster, u, v)]!;
  const fate = field.fates[code]!;
  const chance = fate.played === 1 ? 0 : random.next();
  if (chance < fate.played) return { u, v, lie: code === TEE ? FAIRWAY : code, penaltyStrokes: 0 };
  const again = { ...here, penaltyStrokes: 1 };
  if (chance < fate.played + fate.replayed) return again;
  const length = Math.hypot(wayU, wayV) || 1;
  const dropped = solved.relief?.relief(u, v, wayU / length, wayV / length);
  const back = 1 + strokesHere(field, here);
  return dropped === undefined || dropped.penaltyStrokes + dropped.strokes > back ? again : dropped;
}

/** V where a ball is played from; that of the fairway for a tee, which has no mesh. */
const strokesHere = (field: Field, { u, v, lie, value }: Place): number =>
  value ?? field.strokesFrom(lie === TEE ? FAIRWAY : lie, u, v);
