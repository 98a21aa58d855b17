import type { Font, Text } from '../marks.ts';
import type { Quad } from '../plane/quad.ts';
import { cutOf } from './faces.ts';
import { LETTERS, WIDTHS } from './widths.ts';

const CODES = LETTERS.split(' ').map((hex) => Number.parseInt(hex, 16));
const TABLES = new Map<string, ReadonlyMap<number, number>>(
  Object.entries(WIDTHS).map(([cut, row]) => {
    const widths = row.split(' ').map(Number);
    return [cut, new Map(CODES.map((code, i) => [code, widths[i] ?? -1]))];
  }),
);

/** A letter that the font lacks is taken to be this wide, thousandths of the size: as wide as a wide one, so that room is kept. */
const UNKNOWN = 900;
const LETTER_UNKNOWN = -1;

/**
 * Width in px of one line of words: the sum of advance widths and tracking. Kerning is left out, so letters set with it are spread by a
 * hundredth or two: painters set every line as wide as it is measured here.
 */
export function widthPx(text: string, font: Font): number {
  const table = TABLES.get(cutOf(font));
  let thousandths = 0;
  let letters = 0;
  for (const letter of text) {
    const width = table?.get(letter.codePointAt(0) ?? 0) ?? LETTER_UNKNOWN;
    thousandths += width === LETTER_UNKNOWN ? UNKNOWN : width;
    letters++;
  }
  return (thousandths * font.sizePx) / 1000 + letters * font.trackingPx;
}

/** From a text's anchor along its base line to where its first letter begins, in px. */
export function startPx({ text, font, anchor }: Pick<Text, 'text' | 'font' | 'anchor'>): number {
  return anchor === 'start' ? 0 : (anchor === 'middle' ? -0.5 : -1) * widthPx(text, font);
}

/** Heights above and below the base line that letters of these fonts keep within, as shares of the size. */
const ABOVE = 0.76;
const BELOW = 0.22;

/** The box of a text mark as four corners, its halo left out. Figures have no descenders. */
export function boxOfText(text: Pick<Text, 'text' | 'font' | 'at' | 'anchor' | 'turnRad'>): Quad {
  const width = widthPx(text.text, text.font);
  const left = startPx(text);
  const above = -ABOVE * text.font.sizePx;
  const below = /^[\d.· −]+$/.test(text.text) ? 0 : BELOW * text.font.sizePx;
  const [sin, cos] = [Math.sin(text.turnRad), Math.cos(text.turnRad)];
  const corner = (x: number, y: number) => ({
    x: text.at.x + x * cos - y * sin,
    y: text.at.y + x * sin + y * cos,
  });
  return [corner(left, above), corner(left + width, above), corner(left + width, below), corner(left, below)];
}
