import type { Area, HoleGround } from '../../ground/hole.ts';
import type { NormalPart, Option, PlayerModel } from '../../player/option.ts';
import { LIES, type Lie, type Surface } from '../../quantity/lies.ts';
import { flatFrame } from './flatFrame.ts';

/** Small made-up holes and players for tests: metres east and north, the ball at the origin. */
export type Corner = readonly [number, number];

export const area = (surface: Surface, corners: readonly Corner[], more: Partial<Area> = {}): Area => ({
  id: more.id ?? `${surface}/1`,
  surface,
  polygon: { outer: corners.map(([eastM, northM]) => ({ eastM, northM })), inner: [] },
  ...more,
});

export const box = (west: number, south: number, east: number, north: number): Corner[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];

export const round = (east: number, north: number, radius: number, corners = 60): Corner[] =>
  Array.from({ length: corners }, (_, i) => {
    const turn = (2 * Math.PI * i) / corners;
    return [east + radius * Math.cos(turn), north + radius * Math.sin(turn)];
  });

export const hole = (flag: Corner, areas: readonly Area[]): HoleGround => {
  const ball = { eastM: 0, northM: 0 };
  const at = { eastM: flag[0], northM: flag[1] };
  return {
    hole: '1',
    par: 4,
    parGuessed: false,
    frame: flatFrame,
    ball,
    flag: at,
    flagFrom: 'given',
    line: [ball, at],
    areas,
    cautions: [],
  };
};

export const part = (weight: number, alongM: number, sdM: number, acrossM = 0): NormalPart => ({
  weight,
  alongM,
  acrossM,
  sdAlongM: sdM,
  sdAcrossM: sdM,
  corr: 0,
});

export const option = (club: string, parts: readonly NormalPart[], lies: readonly Lie[] = LIES): Option => ({
  club,
  swing: 'full',
  evidence: 'stated',
  full: true,
  byLie: Object.fromEntries(lies.filter((l) => l !== 'penalty').map((l) => [l, { parts, rest: true }])),
  doubt: { balls: 0, seAlongM: 0, seAcrossM: 0, seLogSdAlong: 0, seLogSdAcross: 0, seMishitShare: 0 },
});

/** A player who always takes so many putts. */
export const player = (options: readonly Option[], putts: number): PlayerModel => ({
  name: 'toy',
  options,
  learnable: [],
  putting: [{ distanceM: 0, strokes: putts }],
});
