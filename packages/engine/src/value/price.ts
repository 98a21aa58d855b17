import type { Pattern } from '../player/option.ts';
import { SURFACES } from '../quantity/lies.ts';
import { RUNS_ON } from '../reach/clubToday.ts';
import { shortSided, type Weapon } from './arsenal.ts';
import { ballsFor } from './balls.ts';
import type { Field } from './field.ts';
import { BUNKER, cellAt, FAIRWAY, GREEN, OUT, PENALTY, RECOVERY, ROUGH, TEE, UNMAPPED } from './raster.ts';
import type { Here } from './query.ts';
import type { Chances, Places, Priced, Stroke } from './solution.ts';
import type { Solving } from './sweep.ts';

/** Distances to the flag are counted in quarter metres. */
const BIN_M = 0.25;
/** Areas are counted from `UNMAPPED` on. */
const FIRST_AREA = UNMAPPED;

type From = Pick<Here, 'u' | 'v'>;

/** A stroke as it flies and runs down one line: its parts where they land, their runs on `RUNS_ON`, and which way they run. */
export interface Played {
  readonly pattern: Pattern;
  /** The pattern with each part whole, where gusts spread it over several. */
  readonly whole: Pattern;
  readonly runsM: Float64Array;
  /** By part: how far the direction of the run turns to the right of the aim line, its sine and cosine; `undefined` for none at all. */
  readonly runSin: Float64Array | undefined;
}

export function playedOf(here: From, w: Weapon, bearing: number): Played {
  if (w.today === undefined) return { pattern: w.pattern, whole: w.pattern, runsM: w.runsM, runSin: undefined };
  const today = w.today.facePattern(here.u, here.v, bearing);
  return {
    pattern: today.landing(),
    whole: today.landingWhole(),
    runsM: today.runsM.slice(),
    runSin: today.runSin.slice(),
  };
}

/** How far a pitched ball of a part runs on from a raster cell, metres: not at all in sand, in a penalty area or out of bounds. */
export function runOn(field: Field, { pattern, runsM }: Played, part: number, cell: number): number {
  if (pattern.rest) return 0;
  const code = field.raster.surface[cell]!;
  const k = code === GREEN ? 0 : code === FAIRWAY || code === TEE ? 1 : code === ROUGH || code === RECOVERY ? 2 : -1;
  return k < 0 ? 0 : runsM[part * RUNS_ON.length + k]!;
}

/** The unit direction that a pitched ball of a part runs in: on from where it was played, turned by the wind; `sin` and `cos` of the aim line for one that went nowhere. */
export function runWay(
  played: Played,
  part: number,
  du: number,
  dv: number,
  sin: number,
  cos: number,
): readonly [number, number] {
  const lengthM = Math.hypot(du, dv);
  const [u, v] = lengthM < 1 ? [sin, cos] : [du / lengthM, dv / lengthM];
  if (played.runSin === undefined) return [u, v];
  const right = played.runSin[part]!;
  const on = Math.sqrt(1 - right * right);
  return [on * u + right * v, on * v - right * u];
}

/** Where the good strike's mean pitches and where it finishes, and the pattern as it lands, for a stroke of a bearing in the play frame. */
export function placesOf(field: Field, here: From, w: Weapon, bearing: number): Places {
  return placesPlayed(field, here, playedOf(here, w, bearing), bearing);
}

function placesPlayed(field: Field, here: From, played: Played, bearing: number): Places {
  const sin = Math.sin(bearing);
  const cos = Math.cos(bearing);
  const { alongM, acrossM } = played.whole.parts[0]!;
  const u = here.u + alongM * sin + acrossM * cos;
  const v = here.v + alongM * cos - acrossM * sin;
  const run = runOn(field, played, 0, cellAt(field.raster, u, v));
  const [onU, onV] = runWay(played, 0, u - here.u, v - here.v, sin, cos);
  return {
    lands: field.frame.toPlane(u, v),
    finishes: field.frame.toPlane(u + run * onU, v + run * onV),
    pattern: played.whole,
  };
}

/** Balls of a stroke by where they come to rest. */
interface Tally {
  /** By area, from `FIRST_AREA` on: chance, and chance times cost. */
  readonly chance: Float64Array;
  readonly cost: Float64Array;
  /** By surface code; what is unmapped is left out. */
  readonly surface: Float64Array;
  /** By distance from the flag in bins, of balls in play. */
  readonly distance: Float64Array;
}

/**
 * A stroke priced ball by ball: each part of its pattern laid out with some thousand balls, each run out, looked up on the ground as
 * painted, and costed. An independent check of the fast rule, and the figures that are shown.
 */
export function price(field: Field, solved: Solving, here: Here, weapon: Weapon, stroke: Stroke): Priced {
  const bearing = stroke.bearingRad - field.frame.bearingRad;
  const played = playedOf(here, shortSided(weapon, field.shortSide.at(here.u, here.v)), bearing);
  const { chance, cost, surface, distance } = tally(field, solved, here, played, bearing);
  const total = chance.reduce((sum, x) => sum + x, 0);
  const share = (code: number): number => surface[code]! / total;
  const chances: Chances = {
    green: share(GREEN),
    fairway: share(FAIRWAY) + share(TEE),
    rough: share(ROUGH),
    bunker: share(BUNKER),
    penalty: share(PENALTY),
    outOfBounds: share(OUT),
    recovery: share(RECOVERY),
    unmapped: chance[UNMAPPED - FIRST_AREA]! / total,
  };
  const byArea = (figures: Float64Array): Map<number, number> => {
    const found = new Map<number, number>();
    figures.forEach((x, k) => {
      if (chance[k]! > 0) found.set(k + FIRST_AREA, x / total);
    });
    return found;
  };
  return {
    ...stroke,
    strokes: cost.reduce((sum, x) => sum + x, 0) / total,
    chances,
    areaChances: byArea(chance),
    areaCosts: byArea(cost),
    ...proximity(distance),
    ...placesPlayed(field, here, played, bearing),
  };
}

function tally(field: Field, solved: Solving, here: Here, played: Played, bearing: number): Tally {
  const { raster } = field;
  const sin = Math.sin(bearing);
  const cos = Math.cos(bearing);
  const areas = field.ground.areas.length - FIRST_AREA;
  const chance = new Float64Array(areas);
  const cost = new Float64Array(areas);
  const surface = new Float64Array(SURFACES.length);
  const farthestM = Math.hypot(raster.columns, raster.rows) * raster.stepM;
  const distance = new Float64Array(Math.ceil(farthestM / BIN_M) + 1);
  played.pattern.parts.forEach((p, part) => {
    const balls = ballsFor(p.weight);
    const w = (2 * p.weight) / balls.length;
    const rest = Math.sqrt(Math.max(0, 1 - p.corr * p.corr));
    for (let i = 0; i < balls.length; i += 2) {
      const x = balls[i]!;
      const a = p.alongM + p.sdAlongM * x;
      const r = p.acrossM + p.sdAcrossM * (p.corr * x + rest * balls[i + 1]!);
      let u = here.u + a * sin + r * cos;
      let v = here.v + a * cos - r * sin;
      let cell = cellAt(raster, u, v);
      const run = runOn(field, played, part, cell);
      const [onU, onV] = runWay(played, part, u - here.u, v - here.v, sin, cos);
      if (run > 0) {
        u += run * onU;
        v += run * onV;
        cell = cellAt(raster, u, v);
      }
      const code = raster.surface[cell]!;
      const area = raster.area[cell]! - FIRST_AREA;
      chance[area]! += w;
      // a ball that has run lies where it does by its last roll; one that has not came straight from the stroke
      const [wayU, wayV] = run > 0 ? [onU, onV] : wayOf(here, u, v);
      cost[area]! += w * (1 + costOn(field, solved, here, u, v, code, wayU, wayV));
      if (area !== UNMAPPED - FIRST_AREA) surface[code]! += w;
      if (code === OUT || code === PENALTY) continue;
      distance[Math.min(distance.length - 1, (field.distanceM(u, v) / BIN_M) | 0)]! += w;
    }
  });
  return { chance, cost, surface, distance };
}

/** Strokes still to play for a ball at rest at a place, after a stroke from `here`. */
export function strokesAtRest(field: Field, solved: Solving, here: Here, u: number, v: number): number {
  return costOn(field, solved, here, u, v, field.raster.surface[cellAt(field.raster, u, v)]!, ...wayOf(here, u, v));
}

/** The direction from a state to a place, as a unit vector. */
function wayOf(here: Here, u: number, v: number): [number, number] {
  const length = Math.hypot(u - here.u, v - here.v) || 1;
  return [(u - here.u) / length, (v - here.v) / length];
}

/** The same where the surface is known, and the unit direction that the ball came along. */
function costOn(
  field: Field,
  solved: Solving,
  here: Here,
  u: number,
  v: number,
  code: number,
  wayU: number,
  wayV: number,
): number {
  if (code === GREEN) return field.puttsFrom(u, v);
  const { played, replayed, lifted } = field.fates[code]!;
  const again = 1 + here.strokes;
  let cost = replayed * again;
  if (played > 0) cost += played * field.strokesFrom(code === TEE ? FAIRWAY : code, u, v);
  if (lifted === 0) return cost;
  if (solved.relief === undefined) return cost + lifted * again;
  solved.relief.at(u, v, wayU, wayV, 0.5);
  const { legal, strokes } = solved.relief;
  return cost + lifted * (legal * (1 + Math.min(strokes, here.strokes)) + (1 - legal) * again);
}

function proximity(distance: Float64Array): { proximityMeanM: number; proximityMedianM: number } {
  let total = 0;
  let sum = 0;
  distance.forEach((w, bin) => {
    total += w;
    sum += w * (bin + 0.5) * BIN_M;
  });
  if (total === 0) return { proximityMeanM: 0, proximityMedianM: 0 };
  let bin = 0;
  let below = 0;
  while (bin + 1 < distance.length && below + distance[bin]! < total / 2) below += distance[bin++]!;
  const within = distance[bin]! > 0 ? (total / 2 - below) / distance[bin]! : 0;
  return { proximityMeanM: sum / total, proximityMedianM: (bin + within) * BIN_M };
}
