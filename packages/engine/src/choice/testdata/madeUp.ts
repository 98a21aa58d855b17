import { REFERENCE } from '../../day/day.ts';
import type { Area, HoleGround } from '../../ground/hole.ts';
import type { NormalPart, Option, Pattern, PatternDoubt } from '../../player/option.ts';
import type { Surface } from '../../quantity/lies.ts';
import type { HoleSolution, Priced, Stroke } from '../../value/solution.ts';
import { flatFrame } from '../../value/testdata/flatFrame.ts';
import { placeAt } from '../view.ts';

/** Made-up ground and strokes with answers that can be worked out by hand. For tests only; x is east, y is north, the flag due north. */
export const SURE: PatternDoubt = {
  balls: 0,
  seAlongM: 0,
  seAcrossM: 0,
  seLogSdAlong: 0,
  seLogSdAcross: 0,
  seMishitShare: 0,
};

export const part = (over: Partial<NormalPart> = {}): NormalPart => ({
  weight: 1,
  alongM: 100,
  acrossM: 0,
  sdAlongM: 8,
  sdAcrossM: 6,
  corr: 0,
  ...over,
});

export function optionOf(parts: readonly NormalPart[], over: Partial<Option> = {}): Option {
  const pattern: Pattern = { parts, rest: true };
  return {
    club: '8-iron',
    swing: 'full',
    evidence: 'stated',
    full: true,
    byLie: { tee: pattern, fairway: pattern, rough: pattern },
    doubt: SURE,
    ...over,
  };
}

export const box = (id: string, surface: Surface, [x0, y0, x1, y1]: readonly [number, number, number, number]): Area => ({
  id,
  surface,
  polygon: {
    outer: [
      { eastM: x0, northM: y0 },
      { eastM: x1, northM: y0 },
      { eastM: x1, northM: y1 },
      { eastM: x0, northM: y1 },
    ],
    inner: [],
  },
});

export function groundWith(areas: readonly Area[], over: Partial<HoleGround> = {}): HoleGround {
  const ball = { eastM: 0, northM: 0 };
  const flag = { eastM: 0, northM: 100 };
  return {
    hole: '1',
    par: 3,
    parGuessed: false,
    frame: flatFrame,
    ball,
    flag,
    flagFrom: 'given',
    line: [ball, flag],
    areas,
    cautions: [],
    ...over,
  };
}

const NO_CHANCES = {
  green: 0,
  fairway: 0,
  rough: 0,
  bunker: 0,
  penalty: 0,
  outOfBounds: 0,
  recovery: 0,
  unmapped: 0,
};

/** A priced stroke from shares and mean costs by area index; the shares sum to 1. */
export function pricedWith(stroke: Stroke, byArea: readonly (readonly [area: number, share: number, mean: number])[]): Priced {
  const finishes = placeAt({ eastM: 0, northM: 0 }, stroke.bearingRad, stroke.option.byLie.tee?.parts[0]?.alongM ?? 0);
  return {
    ...stroke,
    strokes: byArea.reduce((sum, [, share, mean]) => sum + share * mean, 0),
    chances: NO_CHANCES,
    areaChances: new Map(byArea.map(([area, share]) => [area, share])),
    areaCosts: new Map(byArea.map(([area, share, mean]) => [area, share * mean])),
    proximityMeanM: 0,
    proximityMedianM: 0,
    lands: finishes,
    finishes,
    pattern: stroke.option.byLie.tee ?? { parts: [], rest: true },
  };
}

/** A solution that knows only what a ball at rest costs, and prices strokes by `strokesOf`. Everything else fails. */
export function solutionOf(ground: HoleGround, over: Partial<HoleSolution>): HoleSolution {
  const fail = (): never => {
    throw new Error('not asked in this test');
  };
  return {
    ground,
    day: REFERENCE,
    heightAt: () => 0,
    status: { states: 0, options: 0, sweeps: 0, residual: 0, converged: true },
    greenTakenAsFlat: true,
    surfaceAt: fail,
    areaAt: fail,
    isUnmapped: () => false,
    next: fail,
    unplayable: () => undefined,
    strokesAtRest: fail,
    best: fail,
    bestOf: fail,
    strokesOf: fail,
    placesOf: (from, stroke) => {
      const pattern = stroke.option.byLie[from.lie];
      const good = pattern?.parts[0];
      if (pattern === undefined || good === undefined) return undefined;
      const lands = placeAt(from.at, stroke.bearingRad, good.alongM, good.acrossM);
      return { lands, finishes: lands, pattern };
    },
    price: fail,
    scores: fail,
    playedFrom: fail,
    ...over,
  };
}
