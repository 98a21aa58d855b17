import type { Font } from '../marks.ts';
import { widthPx } from './measure.ts';

/** Words in lines no wider than `mostPx`, broken at spaces only: a single word that is wider stands alone. */
export function wrapped(text: string, font: Font, mostPx: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthPx(longer, font) <= mostPx) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A font made smaller, down to `leastPx`, until a line of words is no wider than `mostPx`. */
export function fitting(text: string, font: Font, mostPx: number, leastPx: number): Font {
  const share = Math.min(1, mostPx / Math.max(1, widthPx(text, font)));
  const sizePx = Math.max(leastPx, Math.floor(font.sizePx * share * 2) / 2);
  return { ...font, sizePx, trackingPx: (font.trackingPx * sizePx) / font.sizePx };
}
