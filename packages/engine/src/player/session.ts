import { fitSwings, storedPattern, type SwingBalls, type SwingFit } from './ability.ts';
import { clubKey, isFullSwing, readClub, swingKey } from './club.ts';
import type { ClubInBag, PlayerFile } from './file.ts';
import { claimsOf, knownCarries } from './knownCarries.ts';
import { onCoursePrior } from './prior.ts';

const sameSwing = (a: { club: string; swing: string }, b: { club: string; swing: string }): boolean =>
  clubKey(a.club) === clubKey(b.club) && swingKey(a.swing) === swingKey(b.swing);

/**
 * Fits the balls of a session for a player: the file's claims and its other fitted clubs are in the prior, and full swings of clubs in the bag that
 * have no balls follow with n = 0, as believed.
 */
export function fitSession(player: PlayerFile, swings: readonly SwingBalls[]): readonly SwingFit[] {
  const hit = (club: string): boolean => swings.some((s) => sameSwing(s, { club, swing: 'full' }));
  const unhit = (player.clubs ?? [])
    .filter((c) => readClub(c.name)?.family !== 'putter' && !hit(c.name))
    .map((c): SwingBalls => ({
      club: c.name,
      swing: 'full',
      balls: [],
      ...(c.loftDeg === undefined ? {} : { loftDeg: c.loftDeg }),
    }));
  const earlier = knownCarries({
    ...player,
    patterns: (player.patterns ?? []).filter((p) => !swings.some((s) => sameSwing(s, p))),
  });
  return fitSwings(player, [...swings, ...unhit], earlier).map((s) => atItsWord(s, claimedOf(player, s.club, s.swing)));
}

/** A claim without a ball against it is taken at its word, as it is when options are made. */
function atItsWord(s: SwingFit, claimM: number | undefined): SwingFit {
  if (s.fit.n > 0 || claimM === undefined) return s;
  const { value, se, cuts } = s.fit.carryM;
  const carryM = { value: claimM, se, cuts: cuts.map((x) => (x * claimM) / value) };
  return { ...s, fit: { ...s.fit, carryM } };
}

/** The carry that the player claims for a swing. */
export const claimedOf = (player: PlayerFile, club: string, swing: string): number | undefined =>
  claimsOf(player).find((c) => sameSwing(c, { club, swing }))?.carryM;

/**
 * The Player file with these fits: what was known stays, earlier fits of the same swings are replaced, clubs that were only hit join the bag, and
 * what the course adds stands in it to be changed.
 */
export function fittedPlayer(player: PlayerFile, fits: readonly SwingFit[], units: 'yd' | 'm'): PlayerFile {
  const fresh = fits.filter((s) => s.fit.n > 0).map(storedPattern);
  const kept = (player.patterns ?? []).filter((p) => !fresh.some((f) => sameSwing(f, p)));
  const clubs = [...(player.clubs ?? [])];
  const byCarry = fits.toSorted((a, b) => b.fit.carryM.value - a.fit.carryM.value);
  const hit = [...byCarry.filter((s) => isFullSwing(s.swing)), ...byCarry];
  for (const s of hit)
    if (!clubs.some((c: ClubInBag) => clubKey(c.name) === clubKey(s.club))) clubs.push({ name: s.club });
  const { version, name, ...known } = player;
  return {
    version,
    name,
    hand: 'right',
    units,
    onCourse: onCoursePrior(player),
    ...known,
    clubs,
    patterns: [...kept, ...fresh],
  };
}
