import { type Charted, type Layer, LAYERS, paint, PALETTES, scene, type Scene } from '@leeway/chart';
import type { DrawAsk, Picture } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** Ground, kept as a bitmap while its sheet stays; what is drawn over it anew; and `signs`, which are the page's own handles. */
const GROUND: readonly Layer[] = LAYERS.slice(0, LAYERS.indexOf('contours'));
const OVER: readonly Layer[] = LAYERS.slice(GROUND.length).filter((layer) => layer !== 'signs');

/** What is drawn of an open hole: a shot's sheet, or the whole hole's. */
function charted(open: OpenHole, shot: number | undefined): Charted {
  const { plan, course, attribution } = open;
  const { solution } = plan;
  return {
    ground: solution.ground,
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    choices: plan.shots.map(({ choice }) => choice),
    ...(shot === undefined ? {} : { shot }),
    strokesAtRest: (p, from) => solution.strokesAtRest(p, from),
  };
}

/** Paints sheets off screen, and keeps the last ground it painted. */
export class Painter {
  private ground: { readonly key: string; readonly canvas: OffscreenCanvas } | undefined;

  /** The sheet of a shot, or of the hole. */
  sheet(open: OpenHole, ask: DrawAsk): Picture {
    const drawn = scene(charted(open, ask.shot), { widthPx: ask.widthPx, heightPx: ask.heightPx }, ask.units);
    const canvas = sheetOf(ask);
    const context = contextOf(canvas);
    context.drawImage(this.groundOf(open, drawn, ask), 0, 0);
    paintOn(canvas, drawn, ask, OVER);
    const { placing, title, description } = drawn;
    return { bitmap: canvas.transferToImageBitmap(), placing, title, description };
  }

  /** The hole's sheet, small. */
  index(open: OpenHole, ask: DrawAsk): Picture {
    const { shot: _, ...hole } = ask;
    return this.sheet(open, hole);
  }

  private groundOf(open: OpenHole, drawn: Scene, ask: DrawAsk): OffscreenCanvas {
    const { widthPx, heightPx, pixelRatio, light } = ask;
    const { id } = open.ask.ground;
    const key = JSON.stringify([id, open.ask.hole, drawn.placing, widthPx, heightPx, pixelRatio, light]);
    if (this.ground?.key !== key) {
      const canvas = sheetOf(ask);
      paintOn(canvas, drawn, ask, GROUND);
      this.ground = { key, canvas };
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
