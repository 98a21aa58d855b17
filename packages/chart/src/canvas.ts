import { hundredths } from './hundredths.ts';
import type { Dots, Layer, Line, Mark, Scene, Text } from './marks.ts';
import type { Palette } from './palette.ts';
import { FAMILY_LISTS } from './text/faces.ts';
import { startPx, widthPx } from './text/measure.ts';

/** What is used of a 2D canvas context; those of the browser, on a page and off screen, are such brushes. */
export interface Brush {
  fillStyle: unknown;
  strokeStyle: unknown;
  globalAlpha: number;
  lineWidth: number;
  lineCap: 'butt' | 'round' | 'square';
  lineJoin: 'bevel' | 'miter' | 'round';
  font: string;
  letterSpacing: string;
  textAlign: 'center' | 'end' | 'left' | 'right' | 'start';
  textRendering: 'auto' | 'geometricPrecision' | 'optimizeLegibility' | 'optimizeSpeed';
  textBaseline: 'alphabetic' | 'bottom' | 'hanging' | 'ideographic' | 'middle' | 'top';
  save(): void;
  restore(): void;
  scale(x: number, y: number): void;
  translate(x: number, y: number): void;
  rotate(angleRad: number): void;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  arc(x: number, y: number, radius: number, fromRad: number, toRad: number): void;
  closePath(): void;
  fill(rule?: 'evenodd' | 'nonzero'): void;
  stroke(): void;
  fillText(text: string, x: number, y: number): void;
  strokeText(text: string, x: number, y: number): void;
  measureText(text: string): { readonly width: number };
}

export interface PaintOptions {
  readonly palette: Palette;
  /** Only these layers: the ground may be kept as a bitmap and the rest painted over it. All unless given. */
  readonly layers?: readonly Layer[];
  /** Pixels of the canvas to one px of the sheet; 1 unless given. */
  readonly pixelRatio?: number;
}

/**
 * Paints a scene, or some of its layers, where the context's own transform puts it, and leaves the context as it was. The fonts must
 * have been loaded under the names in `FAMILIES`; what stands in for a missing one is squeezed into the room that was measured.
 */
export function paint(brush: Brush, scene: Scene, { palette, layers, pixelRatio = 1 }: PaintOptions): void {
  brush.save();
  brush.scale(pixelRatio, pixelRatio);
  brush.lineCap = 'round';
  brush.lineJoin = 'round';
  brush.textAlign = 'left';
  brush.textBaseline = 'alphabetic';
  brush.textRendering = 'geometricPrecision';
  for (const mark of scene.marks)
    if (layers === undefined || layers.includes(mark.layer)) paintMark(brush, mark, palette);
  brush.restore();
}

function paintMark(brush: Brush, mark: Mark, palette: Palette): void {
  brush.globalAlpha = mark.opacity ?? 1;
  brush.fillStyle = palette[mark.role];
  brush.strokeStyle = palette[mark.role];
  switch (mark.kind) {
    case 'fill':
      brush.beginPath();
      for (const ring of mark.rings) trace(brush, ring, true);
      brush.fill('evenodd');
      return;
    case 'stroke':
      brush.lineWidth = mark.widthPx;
      brush.beginPath();
      for (const line of mark.lines) trace(brush, line, mark.closed);
      brush.stroke();
      return;
    case 'dots':
      paintDots(brush, mark);
      return;
    case 'text':
      paintText(brush, mark, palette);
      return;
  }
}

function trace(brush: Brush, line: Line, closed: boolean): void {
  for (const [i, p] of line.entries()) {
    if (i === 0) brush.moveTo(p.x, p.y);
    else brush.lineTo(p.x, p.y);
  }
  if (closed) brush.closePath();
}

function paintDots(brush: Brush, { at, radiusPx, lineWidthPx }: Dots): void {
  brush.beginPath();
  for (const p of at) {
    brush.moveTo(p.x + radiusPx, p.y);
    brush.arc(p.x, p.y, radiusPx, 0, 2 * Math.PI);
  }
  if (lineWidthPx === undefined) {
    brush.fill();
  } else {
    brush.lineWidth = lineWidthPx;
    brush.stroke();
  }
}

function paintText(brush: Brush, mark: Text, palette: Palette): void {
  const { text, font, at, haloPx } = mark;
  brush.save();
  brush.font = `${font.italic ? 'italic ' : ''}${font.weight} ${font.sizePx}px ${FAMILY_LISTS[font.face]}`;
  brush.letterSpacing = `${font.trackingPx}px`;
  const { width } = brush.measureText(text);
  brush.translate(hundredths(at.x), hundredths(at.y));
  brush.rotate(mark.turnRad);
  brush.translate(hundredths(startPx(mark)), 0);
  if (width > 0) brush.scale(widthPx(text, font) / width, 1);
  if (haloPx > 0) {
    brush.strokeStyle = palette.sheet;
    brush.lineWidth = haloPx;
    brush.strokeText(text, 0, 0);
  }
  brush.fillText(text, 0, 0);
  brush.restore();
}
