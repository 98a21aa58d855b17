/** A stream of random numbers that a seed decides: the same on every machine. It has a state of its own; pass it, never share it. */
export interface Random {
  /** Uniform on [0, 1), 32 bits. */
  readonly next: () => number;
  /** Whole, uniform on 0 … below - 1. */
  readonly below: (limit: number) => number;
  /** Standard normal, by the polar method of Marsaglia and Bray. */
  readonly normal: () => number;
  /** Gamma with this shape and scale 1 (Marsaglia & Tsang 2000). */
  readonly gamma: (shape: number) => number;
  readonly beta: (a: number, b: number) => number;
}

/**
 * xoshiro128** 1.1 of D. Blackman and S. Vigna (2018, public domain): 128 bits of state, period 2^128 - 1. The seed is spread over the
 * state by splitmix32, so that neighbouring seeds give unrelated streams. Not for secrets.
 */
export function randomFrom(seed: number): Random {
  const state = new Uint32Array(4);
  let mix = seed >>> 0;
  for (let i = 0; i < 4; i++) {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    state[i] = (z ^ (z >>> 15)) >>> 0;
  }
  const rotate = (x: number, by: number): number => ((x << by) | (x >>> (32 - by))) >>> 0;

  const next = (): number => {
    const [a = 0, b = 0, c = 0, d = 0] = state;
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const c2 = c ^ a;
    const d2 = d ^ b;
    state[1] = b ^ c2;
    state[0] = a ^ d2;
    state[2] = c2 ^ (b << 9);
    state[3] = rotate(d2, 11);
    return result / 4294967296;
  };

  const normal = (): number => {
    for (;;) {
      const u = 2 * next() - 1;
      const v = 2 * next() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };

  const gamma = (shape: number): number => {
    if (shape < 1) return gamma(shape + 1) * (1 - next()) ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v <= 0) continue;
      const u = 1 - next();
      if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };

  const beta = (a: number, b: number): number => {
    const x = gamma(a);
    return x / (x + gamma(b));
  };
  return { next, below: (limit) => Math.floor(next() * limit), normal, gamma, beta };
}
