/** The page's worker: the engine, the charts and their painter, away from the thread that the page lives on. */
import { answerAt, scopePort } from '@leeway/desk';
import type { PlanDesk } from '../asks.ts';
import { fetchJson } from './fetched.ts';
import { loadFonts } from './fonts.ts';
import { indexPicture, Painter } from './picture.ts';
import { planDesk } from './planDesk.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const painter = new Painter();
const fonts = loadFonts(scope.fonts);
// whoever draws is told
fonts.catch(() => undefined);

answerAt<PlanDesk>(
  scopePort(scope),
  planDesk({
    fetched: fetchJson,
    draw: async (charted, ask) => {
      await fonts;
      return painter.sheet(charted, ask);
    },
    drawIndex: async (charted, ask) => {
      await fonts;
      return indexPicture(charted, ask);
    },
  }),
  // the choice is wanted before its picture
  ['moveFlag', 'spot'],
);
