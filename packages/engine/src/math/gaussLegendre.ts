/** Nodes and weights of a rule on [-1, 1]. */
export interface Rule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * The Gauss-Legendre rule of `n` nodes on [-1, 1], exact for polynomials up to degree 2n - 1: Newton's method on the Legendre
 * polynomial from the usual cosine guess (Abramowitz & Stegun 25.4.29). Nodes rise; good to rounding for n up to a few hundred.
 */
export function gaussLegendre(n: number): Rule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = n; i >= 1; i--) {
    let x = Math.cos((Math.PI * (i - 0.25)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      const [value, derivative] = legendre(n, x);
      slope = derivative;
      const change = value / derivative;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes.push(x);
    weights.push(2 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

function legendre(n: number, x: number): readonly [value: number, derivative: number] {
  let before = 1;
  let now = x;
  for (let k = 2; k <= n; k++) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
  if (n === 0) return [1, 0];
  return [now, (n * (x * now - before)) / (x * x - 1)];
}
