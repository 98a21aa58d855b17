import { readFileSync } from 'node:fs';
import type { Area, HoleGround, Ring } from '../../ground/hole.ts';
import type { NormalPart, Option, Pattern, PatternDoubt, PlayerModel } from '../../player/option.ts';
import { LIES, type Lie, type Surface } from '../../quantity/lies.ts';
import type { PlanePoint } from '../../quantity/points.ts';
import { flatFrame } from './flatFrame.ts';

/** The reference problems of the solver: stated players, made-up holes, and their values by an independent, slower method. */
export type PlayerName = 'player' | 'player_sym' | 'player_mirror';
export type HoleName = 'h1_par3_125' | 't1_symmetric';

interface RawPlayer {
  putting: { step: number; table: number[] };
  options: { id: string; club: string; swing: string; byLie: Record<string, { avail: boolean; comps: number[][] }> }[];
}
interface RawHole {
  id: string;
  par: number;
  tee: [number, number];
  flag: [number, number];
  boundary: [number, number][];
  features: { lie: string; lateral?: boolean; poly: [number, number][] }[];
  queries?: [number, number, string][];
}

/** A state of the reference solution: its value, best stroke, and the whole cost over options and aims (-60 to 60 degrees by a half, right of the flag line). */
export interface ReferenceState {
  x: number;
  y: number;
  lie: Lie;
  V: number;
  option: string;
  aimRefinedDeg: number;
  Q: Record<string, number[]>;
}
export interface ReferenceSolution {
  options: string[];
  states: ReferenceState[];
  /** Rows of x, y, place in `TABLE_LIES`, V, on a ten-metre grid over the hole. */
  table: { step: number; rows: [number, number, number, number][] };
}
export const TABLE_LIES: readonly Lie[] = ['tee', 'fairway', 'rough', 'bunker', 'recovery'];

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

const CERTAIN: PatternDoubt = {
  balls: 0,
  seAlongM: 0,
  seAcrossM: 0,
  seLogSdAlong: 0,
  seLogSdAcross: 0,
  seMishitShare: 0,
};

const part = (c: readonly number[]): NormalPart => {
  const [weight = 0, alongM = 0, acrossM = 0, sdAlongM = 0, sdAcrossM = 0, corr = 0] = c;
  return { weight, alongM, acrossM, sdAlongM, sdAcrossM, corr };
};

/** A reference player: patterns stated by lie, as places of rest. */
export function referencePlayer(name: PlayerName): PlayerModel {
  const raw = read(`${name}.json`) as RawPlayer;
  const options = raw.options.map((o): Option => {
    const byLie: { [L in Lie]?: Pattern } = {};
    for (const lie of LIES) {
      const stated = o.byLie[lie];
      if (stated?.avail) byLie[lie] = { parts: stated.comps.map(part), rest: true };
    }
    return { club: o.club, swing: o.id, evidence: 'stated', full: o.swing === 'full', byLie, doubt: CERTAIN };
  });
  const putting = raw.putting.table.map((strokes, i) => ({ distanceM: i * raw.putting.step, strokes }));
  return { name, options, learnable: [], putting };
}

const ring = (xy: readonly [number, number][]): Ring => xy.map(([eastM, northM]) => ({ eastM, northM }));
const FAR: Ring = ring([
  [-5000, -5000],
  [5000, -5000],
  [5000, 5000],
  [-5000, 5000],
]);

/** A reference hole on a flat frame: x is east, y is north; the boundary is an out-of-bounds area with the hole cut out. */
export function groundOf(raw: RawHole): HoleGround {
  const areas = raw.features.map((f, i): Area => {
    const surface = (f.lie === 'water' ? 'penalty' : f.lie) as Surface;
    return { id: `feature/${i}`, surface, red: f.lateral === true, polygon: { outer: ring(f.poly), inner: [] } };
  });
  areas.push({ id: 'boundary', surface: 'out', polygon: { outer: FAR, inner: [ring(raw.boundary)] } });
  const point = ([eastM, northM]: [number, number]): PlanePoint => ({ eastM, northM });
  const ball = point(raw.tee);
  const flag = point(raw.flag);
  return {
    hole: raw.id,
    par: raw.par,
    parGuessed: false,
    frame: flatFrame,
    ball,
    flag,
    flagFrom: 'given',
    line: [ball, flag],
    areas,
    cautions: [],
  };
}

export const referenceHole = (name: HoleName): HoleGround => groundOf(read(`${name}.json`) as RawHole);

/** The reference values: `h1_par3_125` for `player`, `t1_symmetric` for `player_sym`. */
export function referenceSolution(name: HoleName): ReferenceSolution {
  const file = name === 'h1_par3_125' ? `${name}.solution.json` : `${name}.player_sym.solution.json`;
  return read(file) as ReferenceSolution;
}

export const closedForms = (): unknown => read('closedform.json');
