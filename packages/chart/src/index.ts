export * from './marks.ts';
export type { Charted } from './charted.ts';
export { groundAt } from './groundAt.ts';
export { scene } from './scene.ts';
export type { Size, Units } from './sheet.ts';
export { svg } from './svg.ts';
export { boxOfText } from './text/measure.ts';
export { quadsMeet } from './plane/quad.ts';
