import {
  type Apart,
  type CarryEntry,
  type CarryGap,
  enough,
  gapCosts,
  handicapIndexOf,
  isFullSwing,
  ladderFaults,
  leftBy,
  type Occasions,
  onCourseOf,
  type PlayerFile,
  YARD_M,
} from '@leeway/engine';
import type { HoleLengths } from './holeLengths.ts';
import { gapLines, orderLines, wedgeLines } from './ladderLines.ts';
import { apartLines, occasionLines } from './occasionLines.ts';
import type { Units } from './quantities.ts';

/** What stands beside the table. */
export interface Beside {
  readonly apart: readonly Apart[];
  readonly occasions: Occasions | undefined;
  readonly holes: HoleLengths;
}

/** The table of carries as a coach reads it: longest first, figures in whole yards or metres, with what each column means below. */
export function carriesText(
  player: PlayerFile,
  entries: readonly CarryEntry[],
  gaps: readonly CarryGap[],
  units: Units,
  { apart, occasions, holes }: Beside,
): string {
  const unitM = units === 'm' ? 1 : YARD_M;
  const whole = (m: number): string => (m / unitM).toFixed(0);
  const word = units === 'm' ? 'metres' : 'yards';
  const level =
    player.handicapIndex === undefined
      ? `handicap ${handicapIndexOf(player)} assumed`
      : `handicap ${player.handicapIndex}`;
  const head = ['club', 'carry', '8 in 10', 'all balls', 'length', 'direction', 'mishits', 'balls', 'more'];
  const rows = entries.map((e) => [
    isFullSwing(e.swing) ? e.club : `${e.club}, ${e.swing}`,
    `${whole(e.carryM.mean)} ±${Math.max(1, Math.ceil((e.carryM.hi95 - e.carryM.mean) / unitM))}`,
    whole(e.eightInTenCarryM),
    whole(e.allBallsMeanM),
    `±${whole(e.sdAlongM.mean)}`,
    `±${e.directionSdDeg.mean.toFixed(1)}°`,
    (100 * e.mishitShare.mean).toFixed(0),
    `${e.n}`,
    e.ballsNeeded === null ? '-' : `${e.ballsNeeded.balls}`,
  ]);
  const costs = gapCosts(gaps, entries, leftBy(holes.lengthsM, entries), onCourseOf(player));
  const lines = [
    `Carries of ${player.name}, ${word} (${level})`,
    '',
    ...aligned([head, ...rows]),
    '',
    ...claimLines(entries, whole),
    ...apartLines(apart, entries, whole),
    ...occasionLines(occasions),
    ...wedgeLines(entries, whole),
    ...orderLines(ladderFaults(entries, player.clubs ?? []), whole, word),
    ...gapLines(gaps, costs, holes.words, whole, word),
    nextLine(player, entries, unitM),
    '',
    'carry: the good strike, and how far off it may be (19 times in 20). 8 in 10: the carry that eight balls in ten reach, mishits among them.',
    'all balls: the mean with the mishits in. length, direction: two good strikes in three are within this of the mean. mishits: in 100.',
    'more: further balls until the carry is known to within 2 yards. With few balls the figures lean on what players of this handicap do.',
  ];
  const course = onCourseOf(player);
  if (course.distanceSdPct > 0 || course.mishitShare > 0)
    lines.push(
      `These are the swing's figures. For the course a plan adds ${course.distanceSdPct.toFixed(1)} % of the carry to the length (in quadrature) and ${(100 * course.mishitShare).toFixed(0)} mishits in 100: onCourse in the Player file.`,
    );
  const unhit = entries.filter((e) => e.n === 0).length;
  if (unhit > 0)
    lines.push(
      `${unhit === 1 ? 'One club has' : `${unhit} clubs have`} no balls here: ${unhit === 1 ? 'its' : 'their'} figures are the prior's, moved by the clubs that have.`,
    );
  return `${lines.join('\n')}\n`;
}

/** What the player says, beside what the balls say. */
function claimLines(entries: readonly CarryEntry[], whole: (m: number) => string): readonly string[] {
  const claimed = entries.filter((e) => e.claimedM !== undefined && e.n > 0);
  if (claimed.length === 0) return [];
  return [
    'Claims',
    ...claimed.map(({ club, claimedM = 0, carryM: { mean, lo95, hi95 } }) => {
      const over = claimedM > hi95 ? 'too long' : claimedM < lo95 ? 'too short' : 'may be right';
      return `  ${club}: says ${whole(claimedM)}, carries ${whole(lo95)} to ${whole(hi95)}, most likely ${whole(mean)}: ${over}`;
    }),
    '',
  ];
}

/** Which club to hit next, and what for; or that more balls will not help. */
function nextLine(player: PlayerFile, entries: readonly CarryEntry[], unitM: number): string {
  const { carries, next } = enough(entries, { onCourse: onCourseOf(player) });
  if (next === undefined)
    return 'Next: more balls will not help the choice of club; every carry is known to what it needs. Hit at targets.';
  const { neededM = 0, more = 0 } = carries.find((c) => c.club === next.club && c.swing === next.swing) ?? {};
  const [now, after, needed] = [next.nowM, next.afterM, neededM].map((m) => (m / unitM).toFixed(1));
  const name = isFullSwing(next.swing) ? next.club : `${next.club}, ${next.swing}`;
  const balls = `${next.balls} balls with the ${name}, which bring its carry from ±${now} to about ±${after}`;
  return `Next: ${balls}; a choice of club needs ±${needed}, ${more} balls from here.`;
}

/** Columns side by side: the first to the left, the rest to the right. */
function aligned(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((r) => r[i]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
