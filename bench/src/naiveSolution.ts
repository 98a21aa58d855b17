import type { BallState, Chances, HoleGround, Option, PlanePoint, PlayerModel, Priced, Stroke } from '@leeway/engine';
import { REFERENCE } from '@leeway/engine';
import type { Asked } from './accuracy.ts';
import { OUT, PENALTY, ROUGH } from './field.ts';
import { ballsByLie, candidatesFrom, type Naive, type NaiveSettings, solveNaively } from './naive.ts';
import { cellOf, surfaceOfCell } from './raster.ts';

const UNMAPPED_M = 40 * 0.9144;
const UNMAPPED = -2;
/** Where a ball ended, in the order of the field's codes. */
const CHANCES = ['green', 'fairway', 'rough', 'bunker', 'recovery', 'penalty', 'outOfBounds'] as const;

/** The rival behind the solver's own questions, so that one test can ask both. */
export function naiveSolution(ground: HoleGround, player: PlayerModel, settings: NaiveSettings): Asked {
  const naive = solveNaively(ground, player, settings);
  const values = new Map<string, number>();
  const valueOf = (from: BallState): number => {
    const key = `${from.lie} ${from.at.eastM} ${from.at.northM}`;
    const known = values.get(key) ?? candidatesFrom(naive, from)[0]?.strokes ?? Number.POSITIVE_INFINITY;
    values.set(key, known);
    return known;
  };
  const know = (option: Option): void => {
    if (!naive.balls.has(option)) naive.balls.set(option, ballsByLie(option, naive.draws));
  };
  return {
    ground,
    day: REFERENCE,
    heightAt: () => 0,
    status: {
      states: naive.status.states,
      options: player.options.length,
      sweeps: settings.sweeps,
      residual: naive.status.residual,
      converged: naive.status.residual < 0.005,
    },
    surfaceAt: (p) => surfaceOfCell(ground, naive.field.raster, cellOf(naive.field.raster, p.eastM, p.northM)),
    areaAt: (p) => areaAt(naive, p),
    isUnmapped: (p) => areaAt(naive, p) === UNMAPPED,
    strokesAtRest: (p, from) => atRest(naive, p, from, valueOf(from)).strokes,
    best: (from, within = Number.POSITIVE_INFINITY) => {
      const all = candidatesFrom(naive, from);
      return all.filter((c) => c.strokes <= (all[0]?.strokes ?? 0) + within);
    },
    bestOf: (from, option) => {
      know(option);
      return option.byLie[from.lie] === undefined ? undefined : candidatesFrom(naive, from, [option])[0];
    },
    strokesOf: (from, stroke) => {
      know(stroke.option);
      return price(naive, from, stroke, valueOf(from)).strokes;
    },
    placesOf: (from, stroke) => (know(stroke.option), price(naive, from, stroke, 0)),
    price: (from, stroke) => {
      know(stroke.option);
      return price(naive, from, stroke, valueOf(from));
    },
  };
}

function areaAt(naive: Naive, p: PlanePoint): number {
  const index = naive.field.raster.area[cellOf(naive.field.raster, p.eastM, p.northM)]!;
  return index >= 0 || distanceToMappedM(naive.ground, p) <= UNMAPPED_M ? index : UNMAPPED;
}

function distanceToMappedM(ground: HoleGround, p: PlanePoint): number {
  let least = distanceToLineM(ground.line, p, false);
  for (const a of ground.areas) {
    for (const ring of [a.polygon.outer, ...a.polygon.inner]) least = Math.min(least, distanceToLineM(ring, p, true));
  }
  return least;
}

function distanceToLineM(line: readonly PlanePoint[], p: PlanePoint, closed: boolean): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = closed ? 0 : 1; i < line.length; i++) {
    const a = line.at(i - 1)!;
    const b = line[i]!;
    const e = b.eastM - a.eastM;
    const n = b.northM - a.northM;
    const t = ((p.eastM - a.eastM) * e + (p.northM - a.northM) * n) / (e * e + n * n || 1);
    const u = Math.min(1, Math.max(0, t));
    least = Math.min(least, Math.hypot(p.eastM - a.eastM - u * e, p.northM - a.northM - u * n));
  }
  return least;
}

/** Strokes still to play after a ball comes to rest, penalties in, and the kind of its end. */
function atRest(
  naive: Naive,
  p: PlanePoint,
  from: BallState,
  replayStrokes: number,
): { strokes: number; code: number } {
  const { field } = naive;
  const code = field.codeAt(p.eastM, p.northM);
  if (code === OUT) return { strokes: 1 + replayStrokes, code };
  if (code !== PENALTY) return { strokes: field.dryValue(code, p.eastM, p.northM), code };
  const drop = field.dropValue(from.at.eastM, from.at.northM, p.eastM, p.northM);
  return { strokes: 1 + Math.min(drop, replayStrokes), code };
}

const kindOf = (naive: Naive, code: number, p: PlanePoint): keyof Chances =>
  code === ROUGH && areaAt(naive, p) === UNMAPPED ? 'unmapped' : CHANCES[code]!;

/** Every ball of the stroke, one by one. */
function price(naive: Naive, from: BallState, stroke: Stroke, replayStrokes: number): Priced {
  const balls = naive.balls.get(stroke.option)?.get(from.lie);
  const mean = stroke.option.byLie[from.lie]?.parts[0];
  if (balls === undefined || mean === undefined) throw new Error('The option has no pattern for this lie.');
  const sin = Math.sin(stroke.bearingRad);
  const cos = Math.cos(stroke.bearingRad);
  const place = (along: number, across: number): PlanePoint => ({
    eastM: from.at.eastM + along * sin + across * cos,
    northM: from.at.northM + along * cos - across * sin,
  });
  const n = balls.length / 2;
  const chances = { green: 0, fairway: 0, rough: 0, bunker: 0, penalty: 0, outOfBounds: 0, recovery: 0, unmapped: 0 };
  const areaChances = new Map<number, number>();
  const areaCosts = new Map<number, number>();
  const distances: number[] = [];
  let strokes = 0;
  for (let i = 0; i < n; i++) {
    const p = place(balls[2 * i]!, balls[2 * i + 1]!);
    const rest = atRest(naive, p, from, replayStrokes);
    const area = areaAt(naive, p);
    const cost = 1 + rest.strokes;
    strokes += cost / n;
    chances[kindOf(naive, rest.code, p)] += 1 / n;
    areaChances.set(area, (areaChances.get(area) ?? 0) + 1 / n);
    areaCosts.set(area, (areaCosts.get(area) ?? 0) + cost / n);
    if (rest.code !== OUT && rest.code !== PENALTY) {
      distances.push(Math.hypot(p.eastM - naive.ground.flag.eastM, p.northM - naive.ground.flag.northM));
    }
  }
  distances.sort((a, b) => a - b);
  const finishes = place(mean.alongM, mean.acrossM);
  return {
    ...stroke,
    strokes,
    chances,
    areaChances,
    areaCosts,
    proximityMeanM: distances.reduce((sum, d) => sum + d, 0) / Math.max(1, distances.length),
    proximityMedianM: distances[Math.floor(distances.length / 2)] ?? 0,
    lands: finishes,
    finishes,
    pattern: stroke.option.byLie[from.lie] ?? { parts: [], rest: true },
  };
}
