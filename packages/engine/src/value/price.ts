import type { PlanePoint } from '../quantity/points.ts';
import { SURFACES } from '../quantity/lies.ts';
import { RUNS_ON, type Weapon } from './arsenal.ts';
import type { Field } from './field.ts';
import { BUNKER, cellAt, FAIRWAY, GREEN, OUT, PENALTY, RECOVERY, ROUGH, TEE, UNMAPPED } from './raster.ts';
import type { Here } from './query.ts';
import type { Chances, Priced, Stroke } from './solution.ts';
import type { Solving } from './sweep.ts';

/** Places per axis and part, to four standard deviations by a tenth. */
const REACH = 40;
const STEP = 0.1;
/** Distances to the flag are counted in quarter metres. */
const BIN_M = 0.25;

const PLACES: readonly { readonly z: number; readonly w: number }[] = (() => {
  const at = Array.from({ length: 2 * REACH + 1 }, (_, i) => (i - REACH) * STEP);
  const sum = at.reduce((s, z) => s + Math.exp(-0.5 * z * z), 0);
  return at.map((z) => ({ z, w: Math.exp(-0.5 * z * z) / sum }));
})();

/** Where a pitched ball stops: in sand, in a penalty area or out of bounds where it pitched, else on along the line by the surface. */
function restOf(
  field: Field,
  w: Weapon,
  part: number,
  u: number,
  v: number,
  sin: number,
  cos: number,
): [number, number] {
  if (w.pattern.rest) return [u, v];
  const code = field.raster.surface[cellAt(field.raster, u, v)]!;
  const k = code === GREEN ? 0 : code === FAIRWAY || code === TEE ? 1 : code === ROUGH || code === RECOVERY ? 2 : -1;
  if (k < 0) return [u, v];
  const run = w.runsM[part * RUNS_ON.length + k]!;
  return [u + run * sin, v + run * cos];
}

/**
 * A stroke priced ball by ball: each part of its pattern laid out on a grid of 81 x 81 places, each place run out, looked up on the
 * ground as painted, and costed. An independent check of the fast rule, and the figures that are shown.
 */
export function price(field: Field, solved: Solving, here: Here, weapon: Weapon, stroke: Stroke): Priced {
  const bearing = stroke.bearingRad - field.frame.bearingRad;
  const sin = Math.sin(bearing);
  const cos = Math.cos(bearing);
  const chance = new Map<number, number>();
  const cost = new Map<number, number>();
  const surface = new Float64Array(SURFACES.length);
  const distances: number[] = [];
  let unmapped = 0;
  const ball = (part: number, a: number, r: number, w: number): void => {
    const [u, v] = restOf(field, weapon, part, here.u + a * sin + r * cos, here.v + a * cos - r * sin, sin, cos);
    const cell = cellAt(field.raster, u, v);
    const area = field.raster.area[cell]!;
    const code = field.raster.surface[cell]!;
    chance.set(area, (chance.get(area) ?? 0) + w);
    cost.set(area, (cost.get(area) ?? 0) + w * (1 + strokesAtRest(field, solved, here, u, v)));
    if (area === UNMAPPED) unmapped += w;
    else surface[code]! += w;
    if (code === OUT || code === PENALTY) return;
    const bin = Math.floor(field.distanceM(u, v) / BIN_M);
    distances[bin] = (distances[bin] ?? 0) + w;
  };
  weapon.pattern.parts.forEach((p, part) => {
    const rest = Math.sqrt(Math.max(0, 1 - p.corr * p.corr));
    for (const x of PLACES) {
      for (const y of PLACES) {
        const w = p.weight * x.w * y.w;
        if (w < 1e-9) continue;
        ball(part, p.alongM + p.sdAlongM * x.z, p.acrossM + p.sdAcrossM * (p.corr * x.z + rest * y.z), w);
      }
    }
  });
  const total = [...chance.values()].reduce((a, b) => a + b, 0);
  for (const [k, x] of chance) chance.set(k, x / total);
  for (const [k, x] of cost) cost.set(k, x / total);
  const share = (code: number): number => surface[code]! / total;
  const chances: Chances = {
    green: share(GREEN),
    fairway: share(FAIRWAY) + share(TEE),
    rough: share(ROUGH),
    bunker: share(BUNKER),
    penalty: share(PENALTY),
    outOfBounds: share(OUT),
    recovery: share(RECOVERY),
    unmapped: unmapped / total,
  };
  const good = weapon.pattern.parts[0]!;
  const landsU = here.u + good.alongM * sin + good.acrossM * cos;
  const landsV = here.v + good.alongM * cos - good.acrossM * sin;
  const plane = (u: number, v: number): PlanePoint => field.frame.toPlane(u, v);
  return {
    ...stroke,
    strokes: [...cost.values()].reduce((a, b) => a + b, 0),
    chances,
    areaChances: chance,
    areaCosts: cost,
    ...proximity(distances),
    lands: plane(landsU, landsV),
    finishes: plane(...restOf(field, weapon, 0, landsU, landsV, sin, cos)),
  };
}

/** Strokes still to play for a ball at rest at a place, after a stroke from `here`. */
export function strokesAtRest(field: Field, solved: Solving, here: Here, u: number, v: number): number {
  const code = field.raster.surface[cellAt(field.raster, u, v)]!;
  const again = 1 + here.strokes;
  if (code === OUT) return again;
  if (code !== PENALTY) {
    const strokes = field.strokesOnGround(u, v);
    return Number.isNaN(strokes) ? again : strokes;
  }
  if (solved.relief === undefined) return again;
  const length = Math.hypot(u - here.u, v - here.v) || 1;
  solved.relief.at(u, v, (u - here.u) / length, (v - here.v) / length, 0.5);
  const { legal, strokes } = solved.relief;
  return legal * (1 + Math.min(strokes, here.strokes)) + (1 - legal) * again;
}

function proximity(distances: readonly (number | undefined)[]): { proximityMeanM: number; proximityMedianM: number } {
  let total = 0;
  let sum = 0;
  distances.forEach((w = 0, bin) => {
    total += w;
    sum += w * (bin + 0.5) * BIN_M;
  });
  let below = 0;
  let median = 0;
  for (let bin = 0; bin < distances.length; bin++) {
    const w = distances[bin] ?? 0;
    if (below + w >= total / 2) {
      median = (bin + (w > 0 ? (total / 2 - below) / w : 0)) * BIN_M;
      break;
    }
    below += w;
  }
  return { proximityMeanM: total > 0 ? sum / total : 0, proximityMedianM: median };
}
