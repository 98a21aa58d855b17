import { type Font as FontFile, type GlyphRun, openSync } from 'fontkit';
import { hundredths } from '../hundredths.ts';
import type { Font, Text } from '../marks.ts';
import type { Palette } from '../palette.ts';
import { cutOf } from '../text/faces.ts';
import { startPx, widthPx } from '../text/measure.ts';
import { ttfPath } from './fontFiles.ts';

/** What a PDF is drawn with, in px of the sheet. */
export interface Pen {
  readonly ink: PDFKit.PDFDocument;
  readonly palette: Palette;
  /** The font of a cut, for measuring and outlines. */
  readonly fontOf: (cut: string) => FontFile;
}

/**
 * One line of words, set as wide as it was measured. Its rim is drawn as outlines, so that the words are in the file once and are found
 * and copied once.
 */
export function pdfText({ ink, palette, fontOf }: Pen, mark: Text): void {
  const { text, font, at, haloPx } = mark;
  const file = fontOf(cutOf(font));
  const run = file.layout(text, featuresOf(font));
  const scale = font.sizePx / file.unitsPerEm;
  const naturalPx = run.advanceWidth * scale + run.glyphs.length * font.trackingPx;
  ink.save();
  ink.translate(hundredths(at.x), hundredths(at.y)).rotate((mark.turnRad * 180) / Math.PI);
  ink.translate(hundredths(startPx(mark)), 0);
  if (naturalPx > 0) ink.transform(widthPx(text, font) / naturalPx, 0, 0, 1, 0, 0);
  if (haloPx > 0) {
    outline(ink, run, scale, font.trackingPx);
    ink.lineWidth(haloPx).stroke(palette.sheet);
  }
  ink.font(ttfPath(cutOf(font)), font.sizePx);
  ink.text(text, 0, 0, {
    lineBreak: false,
    baseline: 'alphabetic',
    characterSpacing: font.trackingPx,
    // its types know lists alone, but it hands the features on to the same layout as above
    features: featuresOf(font) as unknown as PDFKit.Mixins.OpenTypeFeatures[],
  });
  ink.restore();
}

/** As browsers do: letters with room between them are not joined. The sans has figures of one width. */
const featuresOf = (font: Font): Record<string, boolean> => ({
  ...(font.trackingPx === 0 ? {} : { liga: false }),
  ...(font.face === 'sans' ? { tnum: true } : {}),
});

function outline(ink: PDFKit.PDFDocument, run: GlyphRun, scale: number, trackingPx: number): void {
  let x = 0;
  for (const [i, glyph] of run.glyphs.entries()) {
    const place = run.positions[i] ?? { xAdvance: 0, xOffset: 0, yOffset: 0 };
    for (const { command, args } of glyph.path.commands) {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args.map((v, j) =>
        hundredths(j % 2 === 0 ? x + (v + place.xOffset) * scale : -(v + place.yOffset) * scale),
      );
      if (command === 'moveTo') ink.moveTo(a, b);
      else if (command === 'lineTo') ink.lineTo(a, b);
      else if (command === 'quadraticCurveTo') ink.quadraticCurveTo(a, b, c, d);
      else if (command === 'bezierCurveTo') ink.bezierCurveTo(a, b, c, d, e, f);
      else ink.closePath();
    }
    x += place.xAdvance * scale + trackingPx;
  }
}

/** Gives the font of a cut, and reads each once. */
export function fontsOnce(): Pen['fontOf'] {
  const opened = new Map<string, FontFile>();
  return (cut) => {
    const known = opened.get(cut);
    if (known) return known;
    const file = openSync(ttfPath(cut));
    if (!('layout' in file)) throw new Error(`the file of ${cut} holds more than one font`);
    opened.set(cut, file);
    return file;
  };
}
