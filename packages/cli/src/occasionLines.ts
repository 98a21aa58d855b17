import type { CarriesDocument } from '@leeway/contract';
import { type Apart, type CarryEntry, isFullSwing, type Occasion, type Occasions } from '@leeway/engine';

const percent = (log: number): string => `${(100 * Math.exp(log)).toFixed(0)} %`;
const span = (mean: number, sd: number): string => `${percent(mean - 1.28 * sd)} to ${percent(mean + 1.28 * sd)}`;

const factor = (mean: number, sd: number): { mean: number; lo80: number; hi80: number } => ({
  mean: Math.exp(mean),
  lo80: Math.exp(mean - 1.28 * sd),
  hi80: Math.exp(mean + 1.28 * sd),
});

/** The same as figures. */
export function occasionsTold(told: Occasions | undefined): Pick<CarriesDocument, 'rangeBallFactor' | 'days'> {
  if (told === undefined) return {};
  const { rangeBall, occasions } = told;
  const days = occasions.flatMap(({ ageDays, rangeBall: ofRange, balls, offset, sd }) =>
    ageDays === undefined ? [] : [{ ageDays, rangeBall: ofRange, balls, ofNow: factor(offset, sd) }],
  );
  return {
    ...(rangeBall && { rangeBallFactor: factor(rangeBall.mean, rangeBall.sd) }),
    ...(days.length > 0 && { days }),
  };
}

/** How days and balls of the range moved the carries: with the 80-in-100 interval of each; nothing when no ball tells its day or kind. */
export function occasionLines(occasions: Occasions | undefined): readonly string[] {
  if (occasions === undefined) return [];
  const { rangeBall, wanders } = occasions;
  const lines: string[] = [];
  if (rangeBall !== undefined)
    lines.push(
      `  range balls go ${percent(rangeBall.mean)} of the own ball, ${span(rangeBall.mean, rangeBall.sd)} at 8 in 10; the carries above are the own ball's`,
    );
  const dated = occasions.occasions.filter((o) => o.ageDays !== undefined);
  if (dated.length > 1) {
    const own = dated.filter((o) => !o.rangeBall);
    const shown = (own.length > 1 ? own : dated).toSorted((a, b) => (b.ageDays ?? 0) - (a.ageDays ?? 0));
    lines.push(...shown.filter((_, i) => i % Math.ceil(shown.length / MOST_DAYS) === 0).map(dayLine));
    lines.push(
      `  carries of this player wander by about ${(100 * wanders).toFixed(0)} % in a year, so a session counts less the older it is; the carries above are now's`,
    );
  }
  return lines.length === 0 ? [] : ['Days and balls', ...lines, ''];
}

const MOST_DAYS = 6;

function dayLine({ ageDays = 0, balls, offset, sd }: Occasion): string {
  const when = ageDays === 0 ? 'on the newest day' : `${ageDays} days before it`;
  return `  ${when}, ${balls} balls: ${percent(offset)} of now, ${span(offset, sd)}`;
}

/** Clubs hit on the range and on the course, each told apart, and the one that the plan uses. */
export function apartLines(
  apart: readonly Apart[],
  entries: readonly CarryEntry[],
  whole: (m: number) => string,
): readonly string[] {
  if (apart.length === 0) return [];
  const of = ({ n, lo80, mean, hi80 }: Apart['rangeM']): string =>
    `${whole(mean)} (${whole(lo80)} to ${whole(hi80)}, ${n} balls)`;
  return [
    'Range and course',
    ...apart.map(({ club, swing, rangeM, courseM }) => {
      const name = isFullSwing(swing) ? club : `${club}, ${swing}`;
      const used = entries.find((e) => e.club === club && e.swing === swing)?.carryM.mean ?? NaN;
      const differ = rangeM.lo80 > courseM.hi80 || courseM.lo80 > rangeM.hi80 ? '; the two do not agree' : '';
      return `  ${name}: range ${of(rangeM)}, course ${of(courseM)}; the plan uses ${whole(used)}${differ}`;
    }),
    '',
  ];
}
