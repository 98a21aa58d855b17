import type { Font } from '../marks.ts';

export const sans = (sizePx: number, weight: Font['weight'] = 400): Font => ({
  face: 'sans',
  weight,
  italic: false,
  sizePx,
  trackingPx: 0,
});

export const serif = (sizePx: number, trackingPx = 0): Font => ({
  face: 'serif',
  weight: 400,
  italic: false,
  sizePx,
  trackingPx,
});

export const italic = (sizePx: number, trackingPx = 0): Font => ({ ...serif(sizePx, trackingPx), italic: true });
