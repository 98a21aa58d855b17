import type { SwingFit } from './ability.ts';
import { clubKey, isFullSwing, swingKey } from './club.ts';
import { carryBelief, type KnownCarry } from './ladder.ts';
import type { Level } from './prior.ts';

/** A swing whose balls go where its club's should not. */
export interface OutOfPlace {
  readonly club: string;
  readonly carryM: number;
  /** What the other clubs make likely, and the standard deviation of that. */
  readonly likelyM: number;
  readonly sdM: number;
}

const LEAST_BALLS = 5;
const LEAST_CLUBS = 3;
/** Standard deviations from what the other clubs make likely: one in 15,000 clubs of a sound ladder. */
const TOO_FAR = 4;

/**
 * Full swings whose carry does not belong between those of the other clubs: balls put down under another club's name, or in another unit. The carry is the
 * median of the balls that the fit takes for good ones, since the fit itself leans on the other clubs.
 */
export function outOfPlace(level: Level, fits: readonly SwingFit[]): readonly OutOfPlace[] {
  const known = fits.flatMap((s): readonly (KnownCarry & { readonly own: SwingFit })[] => {
    if (!isFullSwing(s.swing) || s.balls.length < LEAST_BALLS) return [];
    const carries = s.balls.map((b) => b.carryM).toSorted((a, b) => a - b);
    // Mishits are short: of all balls the good strike's mean stands about here.
    const carryM = carries[Math.floor(0.6 * carries.length)] ?? 0;
    if (!(carryM > 0)) return [];
    const seLog = (1.5 * s.fit.sdCarryM.value) / s.fit.carryM.value / Math.sqrt(carries.length);
    const loft = s.loftDeg === undefined ? {} : { loftDeg: s.loftDeg };
    return [{ club: s.club, swing: s.swing, carryM, seLog, ...loft, own: s }];
  });
  if (known.length < LEAST_CLUBS) return [];
  const odd = known.map((k) => {
    const others = known.filter((o) => clubKey(o.club) !== clubKey(k.club) || swingKey(o.swing) !== swingKey(k.swing));
    const belief = carryBelief(level, k, others);
    const sdLog = Math.hypot(belief.sdLog, k.seLog);
    const off = Math.abs(Math.log(k.carryM / belief.carryM)) / sdLog;
    return { club: k.club, carryM: k.carryM, likelyM: belief.carryM, sdM: belief.carryM * sdLog, off };
  });
  // One wrong club draws the others off a little; the worst alone is named, with any that is nearly as far.
  const worst = Math.max(...odd.map((o) => o.off));
  return odd
    .filter((o) => o.off > TOO_FAR && o.off > 0.8 * worst)
    .map(({ club, carryM, likelyM, sdM }) => ({ club, carryM, likelyM, sdM }));
}
