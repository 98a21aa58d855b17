import { YARD_M } from '../quantity/units.ts';

/**
 * Par of a hole from its length alone. The bands recommended in the Rules of Handicapping (2024, appendix F, men's lengths) overlap;
 * the middle of each overlap is taken: par 3 up to 260 yd and par 4 from 240 yd meet at 250, par 4 up to 490 and par 5 from 450 at 470,
 * par 5 up to 710 and par 6 from 670 at 690.
 */
export function parByLength(lineM: number): number {
  const lengthYd = lineM / YARD_M;
  if (lengthYd <= 250) return 3;
  if (lengthYd <= 470) return 4;
  return lengthYd <= 690 ? 5 : 6;
}
