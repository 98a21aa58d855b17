/** One club and swing measured with both balls, both on the reference day. */
export interface BallMark {
  readonly rangeCarryM: number;
  readonly ownCarryM: number;
}

/** A ball's carry as a share of the player's own ball's, and the standard error of its logarithm. */
export interface BallFactor {
  readonly factor: number;
  readonly seLog: number;
  readonly marks: number;
}

/** Without marks a range ball is taken as the player's own, give or take 5 %: our assumption, for no measurement was found. */
const PRIOR_SD_LOG = 0.05;
/** How far one mark's ratio strays: two carries, each known to about 4 %. */
const MARK_SD_LOG = 0.06;

/** The factor of a player's range balls, learnt from carries with both: normal on the logarithm, prior and marks by their precision. */
export function ballFactor(marks: readonly BallMark[]): BallFactor {
  const precision = 1 / PRIOR_SD_LOG ** 2 + marks.length / MARK_SD_LOG ** 2;
  const sum = marks.reduce((total, m) => total + Math.log(m.rangeCarryM / m.ownCarryM), 0) / MARK_SD_LOG ** 2;
  return { factor: Math.exp(sum / precision), seLog: 1 / Math.sqrt(precision), marks: marks.length };
}
