import type { NormalPart } from './option.ts';

/**
 * How likely it is that a ball was a mishit, by the pattern it was hit with: the share of the density at its place that is not the good strike's
 * (the first part). `carryM` is ball to pitch in a straight line; a ball whose side is not known is judged by its carry alone.
 */
export function mishitChance(parts: readonly NormalPart[], carryM: number, sideM?: number): number {
  const side = sideM === undefined || Math.abs(sideM) > carryM ? undefined : sideM;
  const alongM = side === undefined ? carryM : Math.sqrt(carryM * carryM - side * side);
  const [good = 0, ...others] = parts.map((part) => part.weight * density(part, alongM, side));
  const mishit = others.reduce((sum, d) => sum + d, 0);
  return good + mishit > 0 ? mishit / (good + mishit) : 1;
}

/** Of the bivariate normal, but for the factor that all parts share; of its margin along the line when `acrossM` is not known. */
function density(part: NormalPart, alongM: number, acrossM: number | undefined): number {
  const u = (alongM - part.alongM) / part.sdAlongM;
  if (acrossM === undefined) return Math.exp(-0.5 * u * u) / part.sdAlongM;
  const v = (acrossM - part.acrossM) / part.sdAcrossM;
  const free = 1 - part.corr * part.corr;
  const square = (u * u - 2 * part.corr * u * v + v * v) / free;
  return Math.exp(-0.5 * square) / (part.sdAlongM * part.sdAcrossM * Math.sqrt(free));
}
