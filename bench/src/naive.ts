import type { BallState, Candidate, HoleGround, Lie, Option, PlayerModel, Stroke } from '@leeway/engine';
import { ballsOf, type CommonDraws, commonDraws } from './draws.ts';
import { Field, GRID_LIES, OUT, PENALTY } from './field.ts';
import { cellOf } from './raster.ts';

/** How hard the rival works. */
export interface NaiveSettings {
  /** Balls per option and aim. */
  readonly samples: number;
  /** Distance between the nodes of a value grid. */
  readonly gridM: number;
  readonly aimStepDeg: number;
  readonly sweeps: number;
  readonly seed: number;
  /** Raster of lies; 0.5 unless said. */
  readonly cellM?: number;
}

const DEG = Math.PI / 180;
const WINDOW_DEG = 40;
/** Aims are scanned this many steps apart with a quarter of the balls, then step by step near the best. */
const COARSE = 4;
const COARSE_MARGIN = 0.12;
/** Replays are capped so that a stroke that is nearly always lost stays finite. */
const MAX_REPLAY = 0.97;

/** Options, balls and field of one hole: the rival's working state. */
export interface Naive {
  readonly ground: HoleGround;
  readonly player: PlayerModel;
  readonly settings: NaiveSettings;
  readonly field: Field;
  readonly draws: CommonDraws;
  readonly balls: Map<Option, Map<Lie, Float64Array>>;
  readonly status: { states: number; residual: number };
}

/**
 * A plain Monte Carlo solver of the same decision problem, written fairly: a raster of lies, common random numbers, coarse-to-fine aims,
 * value iteration near to far with one bilinear grid a lie. It treats every pattern as a place of rest.
 */
export function solveNaively(ground: HoleGround, player: PlayerModel, settings: NaiveSettings): Naive {
  const draws = commonDraws(settings.samples, settings.seed);
  const balls = new Map<Option, Map<Lie, Float64Array>>();
  for (const option of player.options) balls.set(option, ballsByLie(option, draws));
  const field = new Field(ground, player, settings.cellM ?? 0.5, settings.gridM);
  const naive: Naive = { ground, player, settings, field, draws, balls, status: { states: 0, residual: 0 } };
  const states = nodesInUse(field);
  naive.status.states = states.length;
  for (let sweep = 0; sweep < settings.sweeps; sweep++) {
    naive.status.residual = 0;
    field.forgetDrops();
    for (const s of states) {
      const values = field.nodes[s.code]!;
      const lie = GRID_LIES[s.code - 1]!;
      const value = scan(naive, { at: s, lie }, values[s.index]!);
      naive.status.residual = Math.max(naive.status.residual, Math.abs(value - values[s.index]!));
      values[s.index] = value;
    }
  }
  field.forgetDrops();
  return naive;
}

export function ballsByLie(option: Option, draws: CommonDraws): Map<Lie, Float64Array> {
  const byLie = new Map<Lie, Float64Array>();
  for (const [lie, pattern] of Object.entries(option.byLie)) byLie.set(lie as Lie, ballsOf(pattern, draws));
  return byLie;
}

interface Node {
  readonly code: number;
  readonly index: number;
  readonly eastM: number;
  readonly northM: number;
}

/** The nodes that some cell of their lie looks up, near to far from the flag. */
function nodesInUse(field: Field): Node[] {
  const { raster, gridM, columns } = field;
  const used = field.nodes.map((values) => new Uint8Array(values.length));
  for (let cell = 0; cell < field.code.length; cell++) {
    const flags = used[field.code[cell]!];
    if (flags === undefined || flags.length === 0) continue;
    const column = Math.floor((((cell % raster.columns) + 0.5) * raster.cellM) / gridM);
    const row = Math.floor(((Math.floor(cell / raster.columns) + 0.5) * raster.cellM) / gridM);
    for (const i of [0, 1, columns, columns + 1]) flags[row * columns + column + i] = 1;
  }
  const { flag } = field.ground;
  const nodes = used.flatMap((flags, code) =>
    [...flags.entries()]
      .filter(([, on]) => on === 1)
      .map(([index]): Node => ({
        code,
        index,
        eastM: raster.westM + (index % columns) * gridM,
        northM: raster.southM + Math.floor(index / columns) * gridM,
      })),
  );
  const toFlagM = (n: Node): number => Math.hypot(n.eastM - flag.eastM, n.northM - flag.northM);
  return nodes.toSorted((a, b) => toFlagM(a) - toFlagM(b));
}

/** Options worth trying from a state: not far short and not far long. */
function optionsFrom(naive: Naive, from: BallState): Option[] {
  const { flag } = naive.ground;
  const toFlagM = Math.hypot(flag.eastM - from.at.eastM, flag.northM - from.at.northM);
  const able = naive.player.options.filter((o) => o.byLie[from.lie] !== undefined);
  const near = able.filter((o) => {
    const alongM = o.byLie[from.lie]!.parts[0]!.alongM;
    return alongM >= 0.25 * toFlagM && alongM <= 1.18 * toFlagM + 14;
  });
  return near.length > 0 ? near : able;
}

function flagBearingRad(naive: Naive, from: BallState): number {
  const { flag } = naive.ground;
  return Math.atan2(flag.eastM - from.at.eastM, flag.northM - from.at.northM);
}

/** Value of a state: the least over options and aims, coarse to fine. `nowStrokes` is what replaying is worth against a drop. */
function scan(naive: Naive, from: BallState, nowStrokes: number): number {
  const stepRad = naive.settings.aimStepDeg * DEG;
  const middleRad = flagBearingRad(naive, from);
  const wide = Math.floor(WINDOW_DEG / (naive.settings.aimStepDeg * COARSE));
  const few = Math.max(25, Math.floor(naive.settings.samples / 4));
  const found = optionsFrom(naive, from).map((option) => {
    let best = { strokes: Number.POSITIVE_INFINITY, aim: 0 };
    for (let k = -wide; k <= wide; k++) {
      const stroke = { option, bearingRad: middleRad + k * COARSE * stepRad };
      const strokes = replayed(tally(naive, from, stroke, nowStrokes, few));
      if (strokes < best.strokes) best = { strokes, aim: k * COARSE };
    }
    return { option, ...best };
  });
  const limit = Math.min(...found.map((f) => f.strokes)) + COARSE_MARGIN;
  let least = Number.POSITIVE_INFINITY;
  for (const f of found) {
    if (f.strokes > limit) continue;
    for (let k = f.aim - COARSE + 1; k < f.aim + COARSE; k++) {
      const stroke = { option: f.option, bearingRad: middleRad + k * stepRad };
      least = Math.min(least, replayed(tally(naive, from, stroke, nowStrokes, naive.settings.samples)));
    }
  }
  return least;
}

/** Mean cost of the balls that do not replay the stroke, and the share that do. */
export interface Tally {
  readonly cost: number;
  readonly replay: number;
}

/** Stroke and distance as a fixed point: V = (1 + A + p) / (1 - p), A the other balls' cost and p the share that replay. */
const replayed = (t: Tally): number => {
  const p = Math.min(MAX_REPLAY, t.replay);
  return (1 + t.cost + p) / (1 - p);
};

/** Plays the first `n` balls of a stroke. A ball in a penalty area takes the cheaper of its best drop and stroke and distance. */
function tally(naive: Naive, from: BallState, stroke: Stroke, nowStrokes: number, n: number): Tally {
  const balls = naive.balls.get(stroke.option)?.get(from.lie);
  if (balls === undefined) return { cost: Number.POSITIVE_INFINITY, replay: 0 };
  const { field } = naive;
  const { raster, code } = field;
  const { eastM, northM } = from.at;
  const sin = Math.sin(stroke.bearingRad);
  const cos = Math.cos(stroke.bearingRad);
  let cost = 0;
  let replays = 0;
  for (let i = 0; i < n; i++) {
    const along = balls[2 * i]!;
    const across = balls[2 * i + 1]!;
    const e = eastM + along * sin + across * cos;
    const m = northM + along * cos - across * sin;
    const here = code[cellOf(raster, e, m)]!;
    if (here === OUT) replays++;
    else if (here === PENALTY) {
      const drop = field.dropValue(eastM, northM, e, m);
      if (drop < nowStrokes) cost += 1 + drop;
      else replays++;
    } else cost += field.dryValue(here, e, m);
  }
  return { cost: cost / n, replay: replays / n };
}

/** Every option over the whole window of aims with all balls: each local minimum, best first. Costs are of the policy that repeats the stroke. */
export function candidatesFrom(naive: Naive, from: BallState, options = optionsFrom(naive, from)): Candidate[] {
  const stepRad = naive.settings.aimStepDeg * DEG;
  const middleRad = flagBearingRad(naive, from);
  const half = Math.floor(WINDOW_DEG / naive.settings.aimStepDeg);
  const nowStrokes = scan(naive, from, firstLook(naive, from));
  const found: Candidate[] = [];
  for (const option of options) {
    const row = Array.from({ length: 2 * half + 1 }, (_, i) =>
      replayed(
        tally(
          naive,
          from,
          { option, bearingRad: middleRad + (i - half) * stepRad },
          nowStrokes,
          naive.settings.samples,
        ),
      ),
    );
    row.forEach((strokes, i) => {
      if (strokes < (row[i - 1] ?? Infinity) && strokes <= (row[i + 1] ?? Infinity)) {
        found.push({ option, bearingRad: middleRad + (i - half) * stepRad, strokes });
      }
    });
  }
  return found.toSorted((a, b) => a.strokes - b.strokes);
}

/** What a state is worth before it is asked: its lie's grid. */
function firstLook(naive: Naive, from: BallState): number {
  const code = GRID_LIES.indexOf(from.lie as (typeof GRID_LIES)[number]) + 1;
  return naive.field.dryValue(code > 0 ? code : 1, from.at.eastM, from.at.northM);
}
