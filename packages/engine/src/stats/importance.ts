import { choleskyOf } from '../math/cholesky.ts';
import { normalPoints } from '../math/normalPoints.ts';
import type { Peak } from './posterior.ts';
import type { Sample } from './sample.ts';

/** One pair of points in three is thrown this much wider, so that tails heavier than a normal's are met. */
const WIDE = 1.5;
const WIDE_SHARE = 1 / 3;

interface Cloud {
  readonly at: readonly number[];
  readonly factor: readonly (readonly number[])[];
  readonly logVolume: number;
  readonly share: number;
}

/**
 * A weighted sample of a log density (known but for a constant) from the normals that stand for its peaks: importance sampling with fixed
 * points; each peak gets points by its estimated mass, a tenth at least.
 */
export function sampleFrom(f: (x: readonly number[]) => number, peaks: readonly Peak[], points: number): Sample {
  const d = peaks[0]?.at.length ?? 0;
  const clouds = cloudsOf(peaks);
  const normals = pointsOf(points, d);
  const x = new Float64Array(points * d);
  const logs = new Float64Array(points);
  let most = -Infinity;
  let from = 0;
  clouds.forEach((cloud, c) => {
    const upTo = c === clouds.length - 1 ? points : Math.min(points, from + Math.round(cloud.share * points));
    for (let i = from; i < upTo; i++) {
      const scale = i % 6 >= 4 ? WIDE : 1;
      const at: number[] = [];
      for (let r = 0; r < d; r++) {
        let sum = cloud.at[r]!;
        for (let k = 0; k <= r; k++) sum += cloud.factor[r]![k]! * scale * normals[i * d + k]!;
        at.push(sum);
        x[i * d + r] = sum;
      }
      logs[i] = f(at) - logProposal(clouds, at);
      most = Math.max(most, logs[i]!);
    }
    from = upTo;
  });
  const weights = logs.map((l) => Math.exp(l - most));
  const total = weights.reduce((sum, w) => sum + w, 0);
  return { figures: d, x, weights: weights.map((w) => w / total) };
}

const laid = new Map<string, Float64Array>();
function pointsOf(points: number, d: number): Float64Array {
  const key = `${points} ${d}`;
  const kept = laid.get(key);
  if (kept !== undefined) return kept;
  const made = normalPoints(points, d);
  laid.set(key, made);
  return made;
}

function cloudsOf(peaks: readonly Peak[]): readonly Cloud[] {
  const raw = peaks.map((peak) => {
    const factor =
      choleskyOf(peak.covariance) ?? peak.covariance.map((row, i) => row.map((v, j) => (i === j ? Math.sqrt(v) : 0)));
    const logVolume = factor.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
    return { at: peak.at, factor, logVolume, mass: peak.height + logVolume };
  });
  const best = Math.max(...raw.map((r) => r.mass));
  const masses = raw.map((r) => Math.max(0.1, Math.exp(r.mass - best)));
  const total = masses.reduce((sum, m) => sum + m, 0);
  return raw.map((r, i) => ({ ...r, share: masses[i]! / total }));
}

function logProposal(clouds: readonly Cloud[], at: readonly number[]): number {
  let sum = 0;
  for (const cloud of clouds) {
    const d = at.length;
    const u: number[] = [];
    let square = 0;
    for (let r = 0; r < d; r++) {
      let rest = at[r]! - cloud.at[r]!;
      for (let k = 0; k < r; k++) rest -= cloud.factor[r]![k]! * u[k]!;
      const v = rest / cloud.factor[r]![r]!;
      u.push(v);
      square += v * v;
    }
    const near = (1 - WIDE_SHARE) * Math.exp(-square / 2);
    const far = WIDE_SHARE * WIDE ** -d * Math.exp(-square / (2 * WIDE * WIDE));
    sum += cloud.share * Math.exp(-cloud.logVolume) * (near + far);
  }
  return Math.log(sum + 1e-300);
}
