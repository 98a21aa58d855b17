import { type Light, PALETTES, type Scene, svg } from '@leeway/chart';
import { facesOf } from '@leeway/chart/faces';
import { pdf } from '@leeway/chart/pdf';
import type { Browser } from '@playwright/test';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { build } from 'vite';
import type { Easel } from './easel.ts';

declare global {
  var easel: Easel;
}

export type Painter = (scene: Scene, light: Light) => Promise<PNG>;

/** The three painters, each as its reader sees it: in a page, in a file opened by itself, in a PDF viewer. */
export interface Studio {
  readonly painters: { readonly canvas: Painter; readonly svg: Painter; readonly pdf: Painter };
  close(): Promise<void>;
}

/** Pixels to one px of a sheet: two, so that a picture can be made smaller before it is compared. */
export const RATIO = 2;

/** Opens a page for each painter, with the fonts that some scenes need. */
export async function openStudio(browser: Browser, scenes: readonly Scene[]): Promise<Studio> {
  const context = await browser.newContext({ deviceScaleFactor: RATIO, viewport: { width: 800, height: 800 } });
  const [page, alone] = [await context.newPage(), await context.newPage()];
  await page.addStyleTag({ content: await facesOf({ marks: scenes.flatMap((s) => s.marks) }) });
  await page.addScriptTag({ type: 'module', content: await bundled() });
  await page.waitForFunction(() => 'easel' in globalThis);
  const picture = (base64: string): PNG => PNG.sync.read(Buffer.from(base64, 'base64'));
  return {
    painters: {
      canvas: async (scene, light) =>
        picture(await page.evaluate(([s, l, ratio]) => easel.canvas(s, l, ratio), [scene, light, RATIO] as const)),
      svg: async (scene, light) => {
        const text = svg(scene, { palette: PALETTES[light], faces: await facesOf(scene) });
        await alone.goto(`data:image/svg+xml;base64,${Buffer.from(text).toString('base64')}`);
        await alone.evaluate(() => document.fonts.ready);
        return PNG.sync.read(await alone.locator('svg').screenshot());
      },
      pdf: async (scene, light) => {
        const base64 = Buffer.from(await pdf(scene, PALETTES[light])).toString('base64');
        return picture(await page.evaluate(([b, ratio]) => easel.pdf(b, ratio), [base64, RATIO] as const));
      },
    },
    close: () => context.close(),
  };
}

/** The page's script, as a bundler makes it of the package. */
async function bundled(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: fileURLToPath(new URL('easel.ts', import.meta.url)), formats: ['es'] },
    },
  });
  const [first] = [built].flat();
  if (!first || !('output' in first)) throw new Error('the page was not bundled');
  return first.output[0].code;
}
