import type { NormalPart } from '../player/option.ts';
import { NEAR_WIDTHS, WIDE_WIDTHS } from './pyramid.ts';

/**
 * A pattern as a handful of round normal clouds: weight, centre along and across the aim line, and width. A cloud's mean of anything
 * on the ground is one read of the pyramid at that width, so a pattern's mean costs as many reads as it has clouds.
 */
export interface Clouds {
  readonly count: number;
  readonly weight: Float64Array;
  readonly alongM: Float64Array;
  readonly acrossM: Float64Array;
  /** First cloud of each part of the pattern, and the end: the clouds of part p are first[p] up to first[p + 1]. */
  readonly first: Int32Array;
  /** Width of each part's clouds: place in `WIDTHS_M`. */
  readonly width: Uint8Array;
  /** Width of each cloud, metres. */
  readonly sdM: Float64Array;
  /** Wet balls of a cloud fewer than this are put together with the stroke's other few, and priced at their middle. */
  readonly few: number;
}

/** All widths, narrowest first: those kept near the flag, then the wide ones. */
export const WIDTHS_M: readonly number[] = [...NEAR_WIDTHS, ...WIDE_WIDTHS.slice(1)].map((w) => w.sdM);

/** How finely a pattern is split. */
export interface Split {
  /** The cloud's variance times this must not exceed the part's smallest variance. */
  readonly slack: number;
  /** Up to these ratios of what is left to the cloud's width, one, two, three and four Hermite places serve; beyond, an even comb. */
  readonly hermite: readonly [number, number, number, number];
  /** Spacing of the comb in widths: good strikes, and the rest. Aliasing is 2 exp(-2 π² / spacing²). */
  readonly goodSpacing: number;
  readonly otherSpacing: number;
  /** Parts other than the good strike become one cloud each. */
  readonly othersWhole: boolean;
  /** Clouds lighter than this are dropped (and the weights rescaled). */
  readonly least: number;
  /** Widest cloud allowed, metres. */
  readonly widestM: number;
  /** As in `Clouds`. */
  readonly few: number;
}
/** For answers. */
export const FINE: Split = {
  slack: 1.15,
  hermite: [0.02, 0.5, 0.8, 1],
  goodSpacing: 1.6,
  otherSpacing: 2,
  othersWhole: false,
  least: 1e-4,
  widestM: Infinity,
  few: 4e-4,
};
/** For finding the best aim of a stroke and comparing strokes roughly: what it leaves out hardly changes with the aim. */
export const MIDDLE: Split = {
  slack: 1.15,
  hermite: [0.3, 0.7, 1.2, 1.2],
  goodSpacing: 2,
  otherSpacing: 2.6,
  othersWhole: false,
  least: 2e-3,
  widestM: Infinity,
  few: 4e-3,
};
/** For deciding what to look at. */
export const COARSE: Split = {
  slack: 0.9,
  hermite: [0.6, 1.2, 2, 2],
  goodSpacing: 2.6,
  otherSpacing: 2.6,
  othersWhole: true,
  least: 4e-3,
  widestM: Infinity,
  few: 1,
};

/** Gauss-Hermite rules for a unit normal: places and weights. */
const HERMITE: readonly (readonly [readonly number[], readonly number[]])[] = [
  [[0], [1]],
  [
    [-1, 1],
    [0.5, 0.5],
  ],
  [
    [-Math.sqrt(3), 0, Math.sqrt(3)],
    [1 / 6, 2 / 3, 1 / 6],
  ],
  [
    [-2.3344142183389773, -0.7419637843027259, 0.7419637843027259, 2.3344142183389773],
    [0.04587585476806852, 0.4541241452319315, 0.4541241452319315, 0.04587585476806852],
  ],
];

/** A rule for a normal of the given sd to be laid under clouds of width `cloudM`: few Hermite places when the cloud is wider, else an even comb. */
function combFor(
  sdM: number,
  cloudM: number,
  spacing: number,
  split: Split,
): readonly [readonly number[], readonly number[]] {
  const order = split.hermite.findIndex((ratio) => sdM < ratio * cloudM);
  if (order >= 0) {
    const [at, weights] = HERMITE[order]!;
    return [at.map((x) => x * sdM), weights];
  }
  const step = spacing * cloudM;
  const reach = Math.max(1, Math.round((3.1 * sdM) / step));
  const at: number[] = [];
  const weights: number[] = [];
  for (let k = -reach; k <= reach; k++) {
    at.push(k * step);
    weights.push(Math.exp(-0.5 * ((k * step) / sdM) ** 2));
  }
  const sum = weights.reduce((a, b) => a + b, 0);
  const second = weights.reduce((a, w, i) => a + w * at[i]! ** 2, 0) / sum;
  const stretch = second > 0 ? sdM / Math.sqrt(second) : 1;
  return [at.map((x) => x * stretch), weights.map((w) => w / sum)];
}

/** The widest cloud within a variance and a width. */
function widest(variance: number, widestM: number): number {
  let k = 0;
  while (k + 1 < WIDTHS_M.length && WIDTHS_M[k + 1]! ** 2 <= variance && WIDTHS_M[k + 1]! <= widestM) k++;
  return k;
}

/** Splits normal parts into clouds. Each part keeps its mean exactly and its covariance up to the clouds dropped for lightness. */
export function cloudsOf(parts: readonly NormalPart[], split: Split): Clouds {
  const weight: number[] = [];
  const alongM: number[] = [];
  const acrossM: number[] = [];
  const sdM: number[] = [];
  const first = new Int32Array(parts.length + 1);
  const width = new Uint8Array(parts.length);
  parts.forEach((part, p) => {
    const { sdAlongM: sa, sdAcrossM: sr, corr } = part;
    const cross = corr * sa * sr;
    const half = (sa * sa + sr * sr) / 2;
    const root = Math.hypot((sa * sa - sr * sr) / 2, cross);
    const most = half + root;
    const least = Math.max(0, half - root);
    // the major axis, as an angle from the aim line towards the right
    const turn = 0.5 * Math.atan2(2 * cross, sa * sa - sr * sr);
    const whole = split.othersWhole && p > 0;
    const k = widest(whole ? Math.sqrt(most * least) : least / split.slack, split.widestM);
    width[p] = k;
    const cloud = WIDTHS_M[k]!;
    const spacing = p === 0 ? split.goodSpacing : split.otherSpacing;
    const left = (variance: number): number => (whole ? 0 : Math.sqrt(Math.max(0, variance - cloud ** 2)));
    const [majorAt, majorW] = combFor(left(most), cloud, spacing, split);
    const [minorAt, minorW] = combFor(left(least), cloud, spacing, split);
    const sin = Math.sin(turn);
    const cos = Math.cos(turn);
    const lightest = split.least * Math.min(1, part.weight * 4);
    let kept = 0;
    for (const [i, x] of majorAt.entries()) {
      for (const [j, y] of minorAt.entries()) {
        const w = part.weight * majorW[i]! * minorW[j]!;
        if (w < lightest) continue;
        kept += w;
        weight.push(w);
        alongM.push(part.alongM + x * cos - y * sin);
        acrossM.push(part.acrossM + x * sin + y * cos);
        sdM.push(cloud);
      }
    }
    first[p + 1] = weight.length;
    for (let n = first[p]!; n < weight.length; n++) weight[n]! *= part.weight / kept;
  });
  return {
    count: weight.length,
    weight: new Float64Array(weight),
    alongM: new Float64Array(alongM),
    acrossM: new Float64Array(acrossM),
    first,
    width,
    sdM: new Float64Array(sdM),
    few: split.few,
  };
}
