/** The cubic on 0 to 1 with values `y0`, `y1` and slopes `m0`, `m1` at its ends (Hermite's). */
export const cubic = (u: number, y0: number, m0: number, y1: number, m1: number): number => {
  const bent = m0 + m1 + 2 * (y0 - y1);
  return y0 + u * (m0 + u * (y1 - y0 - m0 - bent + u * bent));
};

const cubicSlope = (u: number, y0: number, m0: number, y1: number, m1: number): number => {
  const bent = m0 + m1 + 2 * (y0 - y1);
  return m0 + u * (2 * (y1 - y0 - m0 - bent) + 3 * u * bent);
};

const HALVINGS = 40;
const CLOSE = 1e-12;

/** Where the cubic is highest, given that it rises at 0 and does not at 1: the root of its slope. */
export function cubicTop(y0: number, m0: number, y1: number, m1: number): number {
  const bent = m0 + m1 + 2 * (y0 - y1);
  const half = y1 - y0 - m0 - bent;
  const root = Math.sqrt(Math.max(0, half * half - 3 * bent * m0));
  return Math.min(1, Math.max(0, m0 / (root - half)));
}

/** Where the cubic falls to `level` between `from` and 1, by Newton's steps kept within halving brackets, to 1e-12. */
export function cubicFall(level: number, from: number, y0: number, m0: number, y1: number, m1: number): number {
  let lo = from;
  let hi = 1;
  const above = cubic(from, y0, m0, y1, m1) - level;
  let u = from + ((1 - from) * above) / (above + level - y1 || 1);
  for (let i = 0; i < HALVINGS; i++) {
    const miss = cubic(u, y0, m0, y1, m1) - level;
    if (miss > 0) lo = u;
    else hi = u;
    const slope = cubicSlope(u, y0, m0, y1, m1);
    let next = u - miss / slope;
    if (!(next >= lo && next <= hi)) next = (lo + hi) / 2;
    if (Math.abs(next - u) < CLOSE) return next;
    u = next;
  }
  return u;
}
