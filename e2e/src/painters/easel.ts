/** What runs in the page that draws sheets: the canvas painter, and PDF.js. Bundled by `studio.ts`. */
import { type Light, paint, PALETTES, type Scene } from '@leeway/chart';
import * as pdfjs from 'pdfjs-dist';
import * as pdfWorker from 'pdfjs-dist/build/pdf.worker.mjs';

// PDF.js then asks for no worker file.
Object.assign(globalThis, { pdfjsWorker: pdfWorker });

/** Pictures are PNG files in base64, `ratio` pixels to one px of the sheet. */
export interface Easel {
  canvas(scene: Scene, light: Light, ratio: number): Promise<string>;
  pdf(base64: string, ratio: number): Promise<string>;
}

const easel: Easel = {
  async canvas(scene, light, ratio) {
    await Promise.all([...document.fonts].map((font) => font.load()));
    const canvas = new OffscreenCanvas(scene.widthPx * ratio, scene.heightPx * ratio);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('this browser has no 2D canvas');
    paint(context, scene, { palette: PALETTES[light], pixelRatio: ratio });
    return png(canvas);
  },

  async pdf(base64, ratio) {
    const data = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    const task = pdfjs.getDocument({ data, useSystemFonts: false });
    const page = await (await task.promise).getPage(1);
    const viewport = page.getViewport({ scale: (ratio * 4) / 3 });
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(viewport.width);
    canvas.height = Math.round(viewport.height);
    const context = canvas.getContext('2d', { alpha: false });
    if (context) context.textRendering = 'geometricPrecision';
    await page.render({ canvas, viewport }).promise;
    const copy = new OffscreenCanvas(canvas.width, canvas.height);
    copy.getContext('2d')?.drawImage(canvas, 0, 0);
    await task.destroy();
    return png(copy);
  },
};

async function png(canvas: OffscreenCanvas): Promise<string> {
  const blob = await canvas.convertToBlob({ type: 'image/png' });
  const letters = Array.from(new Uint8Array(await blob.arrayBuffer()), (byte) => String.fromCharCode(byte));
  return btoa(letters.join(''));
}

Object.assign(globalThis, { easel });
