import { logBetaPdf } from '../math/gamma.ts';
import { normalPdf } from '../math/normal.ts';
import { SHORT_BETA, SHORT_SHARE, THIN_FULL, THIN_PART } from './mishit.ts';

/** Share of mishits that may have any carry up to twice the good one, so that a stray figure is a mishit and not a crisis. */
const STRAY = 0.01;
const CELLS = 800;
const MOST = 2;
const STEP = MOST / CELLS;

/** Mishits' carry as a share of the good strike's: density and distribution by table on 0 to 2, linear between its rows. */
export interface MishitShape {
  readonly density: (share: number) => number;
  readonly below: (share: number) => number;
}

function shapeWith(thin: { readonly mean: number; readonly sd: number }): MishitShape {
  const pdf = new Float64Array(CELLS + 1);
  for (let i = 0; i <= CELLS; i++) {
    const x = i * STEP;
    const short = x > 0 && x < 1 ? Math.exp(logBetaPdf(x, SHORT_BETA.a, SHORT_BETA.b)) : 0;
    const long = normalPdf((x - thin.mean) / thin.sd) / thin.sd;
    pdf[i] = (1 - STRAY) * (SHORT_SHARE * short + (1 - SHORT_SHARE) * long) + STRAY / MOST;
  }
  const cdf = new Float64Array(CELLS + 1);
  for (let i = 1; i <= CELLS; i++) cdf[i] = cdf[i - 1]! + ((pdf[i - 1]! + pdf[i]!) / 2) * STEP;
  const total = cdf[CELLS]!;
  for (let i = 0; i <= CELLS; i++) cdf[i]! /= total;
  const between = (table: Float64Array, share: number): number => {
    const at = share / STEP;
    const i = Math.min(CELLS - 1, Math.floor(at));
    return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
  };
  return {
    density: (share) => (share >= 0 && share <= MOST ? between(pdf, share) : STRAY / MOST),
    // Beyond the table both go on as the stray share has them, so that a window there has the chance of its balls.
    below: (share) => (share <= 0 ? 0 : share >= MOST ? 1 + ((share - MOST) * STRAY) / MOST : between(cdf, share)),
  };
}

const FULL = shapeWith(THIN_FULL);
const PART = shapeWith(THIN_PART);

export const mishitShape = (full: boolean): MishitShape => (full ? FULL : PART);
