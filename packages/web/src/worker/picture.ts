import { type Charted, type Layer, LAYERS, paint, PALETTES, scene, type Scene } from '@leeway/chart';
import type { HoleGround } from '@leeway/engine';
import type { DrawAsk, Picture } from '../asks.ts';

/** Ground, kept as a bitmap while its sheet stays; what is drawn over it anew; and `signs`, which are the page's own handles. */
const GROUND: readonly Layer[] = LAYERS.slice(0, LAYERS.indexOf('contours'));
const OVER: readonly Layer[] = LAYERS.slice(GROUND.length).filter((layer) => layer !== 'signs');

interface PaintedGround {
  readonly areas: HoleGround['areas'];
  readonly key: string;
  readonly canvas: OffscreenCanvas;
}

/** Paints sheets off screen, and keeps the last ground it painted. */
export class Painter {
  private ground: PaintedGround | undefined;

  /** The sheet of a shot, or of the hole. */
  sheet(charted: Charted, ask: DrawAsk): Picture {
    const shown = ask.shot === undefined ? charted : { ...charted, shot: ask.shot };
    const drawn = scene(shown, { widthPx: ask.widthPx, heightPx: ask.heightPx }, ask.units);
    const canvas = sheetOf(ask);
    const context = contextOf(canvas);
    context.drawImage(this.groundOf(charted, drawn, ask), 0, 0);
    paintOn(canvas, drawn, ask, OVER);
    const { placing, title, description } = drawn;
    return { bitmap: canvas.transferToImageBitmap(), placing, title, description };
  }

  /** The hole's sheet, small. */
  index(charted: Charted, ask: DrawAsk): Picture {
    const { shot: _, ...hole } = ask;
    return this.sheet(charted, hole);
  }

  private groundOf({ ground: { areas } }: Charted, drawn: Scene, ask: DrawAsk): OffscreenCanvas {
    const { widthPx, heightPx, pixelRatio, light } = ask;
    const key = JSON.stringify([drawn.placing, widthPx, heightPx, pixelRatio, light]);
    if (this.ground?.areas !== areas || this.ground.key !== key) {
      const canvas = sheetOf(ask);
      paintOn(canvas, drawn, ask, GROUND);
      this.ground = { areas, key, canvas };
    }
    return this.ground.canvas;
  }
}

const sheetOf = ({ widthPx, heightPx, pixelRatio }: DrawAsk): OffscreenCanvas =>
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
