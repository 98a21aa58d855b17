import { type Charted, Drawing, indexChart, type Layer, LAYERS, paint, PALETTES, type Scene } from '@leeway/chart';
import type { HoleGround } from '@leeway/engine';
import type { DrawAsk, Picture } from '../asks.ts';

/** Ground, kept as a bitmap while its sheet stays; what is drawn over it anew; and what is left out, since the page draws it and moves it at once. */
const GROUND: readonly Layer[] = LAYERS.slice(0, LAYERS.indexOf('contours'));
const OVER: readonly Layer[] = LAYERS.slice(GROUND.length).filter((layer) => layer !== 'signs' && layer !== 'flagline');

interface Sheets {
  readonly areas: HoleGround['areas'];
  readonly format: string;
  readonly drawing: Drawing;
}
interface PaintedGround {
  readonly sheets: Sheets;
  readonly key: string;
  readonly canvas: OffscreenCanvas;
}

/** Paints sheets off screen. The sheets of one hole at one size are held, and the ground that was painted last. */
export class Painter {
  private sheets: Sheets | undefined;
  private ground: PaintedGround | undefined;

  /** The sheet of a shot, or of the hole. */
  sheet(charted: Charted, ask: DrawAsk): Picture {
    const sheets = this.sheetsFor(charted.ground, ask);
    const drawn = sheets.drawing.scene({
      ...charted,
      ...(ask.wind && { wind: ask.wind, arrowOver: true }),
      ...(ask.shot === undefined ? {} : { shot: ask.shot }),
    });
    const canvas = blank(ask);
    contextOf(canvas).drawImage(this.groundOf(sheets, drawn, ask), 0, 0);
    paintOn(canvas, drawn, ask, OVER);
    return pictureOf(canvas, drawn);
  }

  private sheetsFor(ground: HoleGround, { widthPx, heightPx, units, phone }: DrawAsk): Sheets {
    const format = JSON.stringify([widthPx, heightPx, units, phone]);
    if (this.sheets?.areas !== ground.areas || this.sheets.format !== format) {
      const drawing = new Drawing(ground, { widthPx, heightPx }, units, { phone });
      this.sheets = { areas: ground.areas, format, drawing };
    }
    return this.sheets;
  }

  private groundOf(sheets: Sheets, drawn: Scene, ask: DrawAsk): OffscreenCanvas {
    const key = JSON.stringify([drawn.placing, ask.pixelRatio, ask.light]);
    if (this.ground?.sheets !== sheets || this.ground.key !== key) {
      const canvas = blank(ask);
      paintOn(canvas, drawn, ask, GROUND);
      this.ground = { sheets, key, canvas };
    }
    return this.ground.canvas;
  }
}

/** The small chart of the hole. */
export function indexPicture(charted: Charted, ask: DrawAsk): Picture {
  const { widthPx, heightPx, units, shot } = ask;
  const drawn = indexChart(shot === undefined ? charted : { ...charted, shot }, { widthPx, heightPx }, units);
  const canvas = blank(ask);
  paintOn(canvas, drawn, ask, LAYERS);
  return pictureOf(canvas, drawn);
}

const pictureOf = (canvas: OffscreenCanvas, { placing, rose, title, description }: Scene): Picture => ({
  bitmap: canvas.transferToImageBitmap(),
  placing,
  ...(rose && { rose }),
  title,
  description,
});

const blank = ({ widthPx, heightPx, pixelRatio }: DrawAsk): OffscreenCanvas =>
  new OffscreenCanvas(Math.round(widthPx * pixelRatio), Math.round(heightPx * pixelRatio));

function paintOn(
  canvas: OffscreenCanvas,
  drawn: Scene,
  { light, pixelRatio }: DrawAsk,
  layers: readonly Layer[],
): void {
  paint(contextOf(canvas), drawn, { palette: PALETTES[light], layers, pixelRatio });
}

function contextOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser gives no canvas to draw on');
  return context;
}
