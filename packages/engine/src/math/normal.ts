const SQRT_2 = Math.SQRT2;
const INV_SQRT_2PI = 0.3989422804014327;
const INV_SQRT_PI = 0.5641895835477563;

/** Density of the standard normal: exp(-x^2/2) / sqrt(2 pi). */
export const normalPdf = (x: number): number => INV_SQRT_2PI * Math.exp(-0.5 * x * x);

/** Chance that a standard normal is at most `x`; relative error about 1e-15 in both tails, 0 below about -38. */
export const normalCdf = (x: number): number => 0.5 * erfc(-x / SQRT_2);

/**
 * Complementary error function, 2/sqrt(pi) times the integral of exp(-t^2) from `x` up.
 * Rational Chebyshev approximations of W. J. Cody, Mathematics of Computation 23 (1969) 631-637; relative error about 1e-15.
 */
export function erfc(x: number): number {
  const a = Math.abs(x);
  if (a <= 0.46875) return 1 - x * erfOverX(x * x);
  const upper = a <= 4 ? scaledTail(a, a, ERFC_P, ERFC_Q) : farTail(a);
  return x > 0 ? upper : 2 - upper;
}

function erfOverX(sq: number): number {
  const top =
    (((0.185777706184603153 * sq + 3.1611237438705656) * sq + 113.864154151050156) * sq + 377.485237685302021) * sq;
  const bottom = (((sq + 23.6012909523441209) * sq + 244.024637934444173) * sq + 1282.61652607737228) * sq;
  return (top + 3209.37758913846947) / (bottom + 2844.23683343917062);
}

/** exp(-a^2) with the rounding of a^2 kept out of the exponent. */
function expMinusSq(a: number): number {
  const coarse = Math.trunc(a * 16) / 16;
  return Math.exp(-coarse * coarse) * Math.exp(-(a - coarse) * (a + coarse));
}

/** Coefficients from the highest power down. */
const ERFC_P = [
  2.15311535474403846e-8, 0.564188496988670089, 8.88314979438837594, 66.1191906371416295, 298.635138197400131,
  881.95222124176909, 1712.04761263407058, 2051.07837782607147, 1230.33935479799725,
];
const ERFC_Q = [
  1, 15.7449261107098347, 117.693950891312499, 537.181101862009858, 1621.38957456669019, 3290.79923573345963,
  4362.61909014324716, 3439.36767414372164, 1230.33935480374942,
];
const FAR_P = [
  0.0163153871373020978, 0.305326634961232344, 0.360344899949804439, 0.125781726111229246, 0.0160837851487422766,
  6.58749161529837803e-4,
];
const FAR_Q = [
  1, 2.56852019228982242, 1.87295284992346725, 0.527905102951428412, 0.0605183413124413191, 0.00233520497626869185,
];

const scaledTail = (a: number, at: number, p: readonly number[], q: readonly number[]): number =>
  expMinusSq(a) * (horner(p, at) / horner(q, at));

function farTail(a: number): number {
  if (a > 26.6) return 0;
  const inverseSq = 1 / (a * a);
  const ratio = (inverseSq * horner(FAR_P, inverseSq)) / horner(FAR_Q, inverseSq);
  return (expMinusSq(a) * (INV_SQRT_PI - ratio)) / a;
}

function horner(highestFirst: readonly number[], x: number): number {
  let sum = 0;
  for (const c of highestFirst) sum = sum * x + c;
  return sum;
}

/**
 * The `x` below which a standard normal falls with chance `p` in [0, 1]; -Infinity at 0, Infinity at 1, NaN outside.
 * Algorithm AS 241 of M. J. Wichura, Applied Statistics 37 (1988) 477-484; relative error about 1e-15.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * horner(CENTRE_P, r)) / horner(CENTRE_Q, r);
  }
  const tail = q < 0 ? p : 1 - p;
  if (tail === 0) return q < 0 ? -Infinity : Infinity;
  const r = Math.sqrt(-Math.log(tail));
  const x =
    r <= 5 ? horner(NEAR_P, r - 1.6) / horner(NEAR_Q, r - 1.6) : horner(OUTER_P, r - 5) / horner(OUTER_Q, r - 5);
  return q < 0 ? -x : x;
}

const CENTRE_P = [
  2509.0809287301226727, 33430.575583588128105, 67265.770927008700853, 45921.953931549871457, 13731.693765509461125,
  1971.5909503065514427, 133.14166789178437745, 3.387132872796366608,
];
const CENTRE_Q = [
  5226.495278852854561, 28729.085735721942674, 39307.89580009271061, 21213.794301586595867, 5394.1960214247511077,
  687.1870074920579083, 42.313330701600911252, 1,
];
const NEAR_P = [
  7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177, 1.27045825245236838258,
  3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959, 1.42343711074968357734,
];
const NEAR_Q = [
  1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966, 0.14810397642748007459,
  0.68976733498510000455, 1.6763848301838038494, 2.05319162663775882187, 1,
];
const OUTER_P = [
  2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386, 0.026532189526576123093,
  0.29656057182850489123, 1.7848265399172913358, 5.4637849111641143699, 6.6579046435011037772,
];
const OUTER_Q = [
  2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
  0.0148753612908506148525, 0.13692988092273580531, 0.59983220655588793769, 1,
];
