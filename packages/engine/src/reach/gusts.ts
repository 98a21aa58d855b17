import { type Day, windSdMps } from '../day/day.ts';
import type { NormalPart, Pattern } from '../player/option.ts';

/** A wind that a ball may meet, as a day of its own, and how often. */
export interface Met {
  readonly share: number;
  readonly day: Day;
}

/** The wind itself, and the one so many deviations above and below it: with these shares, moments of a normal spread are right to the fifth. */
const MIDDLE_SHARE = 2 / 3;
const OUT_SD = Math.sqrt(3);

/**
 * The winds that a ball may meet where gusts are told, the mean one first; else the day alone. The spread is that of the speed (`windSdMps`); one that would fall
 * below nought blows from the other side.
 */
export function windsOf(day: Day): readonly [Met, ...Met[]] {
  const { wind } = day;
  const sdMps = wind.gustMps === undefined ? 0 : windSdMps(wind);
  if (sdMps === 0) return [{ share: 1, day }];
  const beside = (by: number): Met => {
    const speedMps = wind.speedMps + by * sdMps;
    const turned = speedMps < 0 ? { speedMps: -speedMps, fromDeg: (wind.fromDeg + 180) % 360 } : { speedMps };
    return { share: (1 - MIDDLE_SHARE) / 2, day: { ...day, wind: { ...wind, ...turned } } };
  };
  return [{ share: MIDDLE_SHARE, day }, beside(OUT_SD), beside(-OUT_SD)];
}

/** A pattern whose every part is met by every wind: all parts in the first, then all in the next. */
export const inWinds = (pattern: Pattern, winds: readonly Met[]): Pattern =>
  winds.length === 1
    ? pattern
    : {
        ...pattern,
        parts: winds.flatMap(({ share }) =>
          pattern.parts.map((part): NormalPart => ({ ...part, weight: share * part.weight })),
        ),
      };

/** The same with every part whole again: the mean of its places and the spread that they leave. */
export function inOneWind(pattern: Pattern, winds: number): Pattern {
  if (winds === 1) return pattern;
  const n = pattern.parts.length / winds;
  const parts = Array.from({ length: n }, (_, p): NormalPart => {
    const met = Array.from({ length: winds }, (_wind, k) => pattern.parts[k * n + p]!);
    const weight = met.reduce((sum, m) => sum + m.weight, 0);
    const mean = (of: (m: NormalPart) => number): number => met.reduce((sum, m) => sum + m.weight * of(m), 0) / weight;
    const [alongM, acrossM] = [mean((m) => m.alongM), mean((m) => m.acrossM)];
    const varAlong = mean((m) => m.sdAlongM ** 2 + (m.alongM - alongM) ** 2);
    const varAcross = mean((m) => m.sdAcrossM ** 2 + (m.acrossM - acrossM) ** 2);
    const both = mean((m) => m.corr * m.sdAlongM * m.sdAcrossM + (m.alongM - alongM) * (m.acrossM - acrossM));
    const [sdAlongM, sdAcrossM] = [Math.sqrt(varAlong), Math.sqrt(varAcross)];
    const corr = sdAlongM > 0 && sdAcrossM > 0 ? both / (sdAlongM * sdAcrossM) : 0;
    return { ...met[0]!, weight, alongM, acrossM, sdAlongM, sdAcrossM, corr };
  });
  return { ...pattern, parts };
}
