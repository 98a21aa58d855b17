import type { Pattern } from '@leeway/engine';

/** A small seeded generator of uniforms in [0, 1) (a 32-bit counter through a mixing function). */
function uniforms(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The common random numbers: one uniform and two standard normals for each sample, the same for every pattern. */
export interface CommonDraws {
  readonly n: number;
  readonly part: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

export function commonDraws(n: number, seed: number): CommonDraws {
  const next = uniforms(seed);
  const draws = { n, part: new Float64Array(n), first: new Float64Array(n), second: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    draws.part[i] = next();
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    draws.first[i] = radius * Math.cos(angle);
    draws.second[i] = radius * Math.sin(angle);
  }
  return draws;
}

/** A pattern's balls: metres along and across the aim line, interleaved. */
export function ballsOf(pattern: Pattern, draws: CommonDraws): Float64Array {
  const balls = new Float64Array(2 * draws.n);
  for (let i = 0; i < draws.n; i++) {
    let u = draws.part[i]!;
    let part = pattern.parts[0]!;
    for (const p of pattern.parts) {
      part = p;
      if (u < p.weight) break;
      u -= p.weight;
    }
    const z = draws.first[i]!;
    const across = part.corr * z + Math.sqrt(1 - part.corr ** 2) * draws.second[i]!;
    balls[2 * i] = part.alongM + part.sdAlongM * z;
    balls[2 * i + 1] = part.acrossM + part.sdAcrossM * across;
  }
  return balls;
}
