import PdfDocument from 'pdfkit';
import { hundredths } from '../hundredths.ts';
import type { Line, Mark, Scene, Xy } from '../marks.ts';
import { type Palette, PALETTES } from '../palette.ts';
import { fontsOnce, type Pen, pdfText } from './pdfText.ts';

/** Points of print to one px of a sheet. */
const PT_PER_PX = 0.75;
/** A dot is a line so short that only its round ends are seen. */
const DOT_PX = 0.01;

/**
 * A scene as a PDF of one page: vectors, and text that can be searched, in fonts that are embedded with the letters used. One figure for
 * screen readers, told by the scene's description. There is no clock in it: the same scene gives the same bytes. 1 px is 0.75 pt.
 * Throws a RangeError for a font that is not among the chart's own.
 */
export async function pdf(scene: Scene, palette: Palette = PALETTES.print): Promise<Uint8Array> {
  const ink = new PdfDocument({
    size: [scene.widthPx * PT_PER_PX, scene.heightPx * PT_PER_PX],
    margin: 0,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    info: {
      Title: scene.title,
      Subject: scene.description,
      Creator: 'Leeway',
      // the id of the file is made from it
      CreationDate: new Date(0),
    },
  });
  delete ink.info.CreationDate;
  // its XMP packet would repeat title and date, with & and < as they stand
  ink.endMetadata = () => {};
  const chunks: Uint8Array[] = [];
  const written = new Promise<void>((resolve, reject) => {
    ink.on('data', (chunk: Uint8Array) => void chunks.push(chunk));
    ink.on('end', resolve);
    ink.on('error', reject);
  });
  const pen = { ink, palette, fontOf: fontsOnce() };
  const draw = (): void => {
    ink.scale(PT_PER_PX).lineCap('round').lineJoin('round');
    for (const mark of scene.marks) drawMark(pen, mark);
  };
  ink.addStructure(ink.struct('Figure', { title: scene.title, alt: scene.description }, draw));
  ink.end();
  await written;
  return Buffer.concat(chunks);
}

function drawMark(pen: Pen, mark: Mark): void {
  const { ink, palette } = pen;
  ink.opacity(mark.opacity ?? 1);
  ink.fillColor(palette[mark.role]).strokeColor(palette[mark.role]);
  switch (mark.kind) {
    case 'fill':
      for (const ring of mark.rings) trace(ink, ring, true);
      if (mark.rings.length > 0) ink.fill('even-odd');
      return;
    case 'stroke':
      ink.lineWidth(mark.widthPx);
      for (const line of mark.lines) trace(ink, line, mark.closed);
      if (mark.lines.length > 0) ink.stroke();
      return;
    case 'dots':
      ink.lineWidth(mark.lineWidthPx ?? 2 * mark.radiusPx);
      for (const p of mark.at) {
        if (mark.lineWidthPx === undefined) dot(ink, p);
        else ink.circle(hundredths(p.x), hundredths(p.y), mark.radiusPx);
      }
      if (mark.at.length > 0) ink.stroke();
      return;
    case 'text':
      pdfText(pen, mark);
      return;
  }
}

function trace(ink: Pen['ink'], line: Line, closed: boolean): void {
  for (const [i, p] of line.entries()) {
    if (i === 0) ink.moveTo(hundredths(p.x), hundredths(p.y));
    else ink.lineTo(hundredths(p.x), hundredths(p.y));
  }
  if (closed) ink.closePath();
}

const dot = (ink: Pen['ink'], { x, y }: Xy): void => {
  ink.moveTo(hundredths(x), hundredths(y)).lineTo(hundredths(x) + DOT_PX, hundredths(y));
};
