/** The page's worker: the engine, the charts and their painter, away from the thread that the page lives on. */
import { answerAt, scopePort } from '@leeway/desk';
import type { DrawAsk, Picture, PlanDesk } from '../asks.ts';
import { fetchJson } from './fetched.ts';
import { loadFonts } from './fonts.ts';
import type { OpenHole } from './openHole.ts';
import { Painter } from './picture.ts';
import { planDesk, type Surroundings } from './planDesk.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const painter = new Painter();
const fonts = loadFonts(scope.fonts);
// whoever draws is told
fonts.catch(() => undefined);

const drawnBy =
  (draw: (open: OpenHole, ask: DrawAsk) => Picture): Surroundings['draw'] =>
  async (open, ask) => {
    await fonts;
    return draw(open, ask);
  };

answerAt<PlanDesk>(
  scopePort(scope),
  planDesk({
    fetched: fetchJson,
    draw: drawnBy((open, ask) => painter.sheet(open, ask)),
    drawIndex: drawnBy((open, ask) => painter.index(open, ask)),
  }),
);
