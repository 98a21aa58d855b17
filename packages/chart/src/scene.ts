import type { Charted } from './charted.ts';
import { Drawing, type DrawingOptions } from './drawing.ts';
import type { Scene } from './marks.ts';
import type { Size, Units } from './sheet.ts';

/** One sheet drawn afresh: see `Drawing`, which keeps what does not change from one sheet to the next. */
export const scene = (charted: Charted, size: Size, units: Units, options: DrawingOptions = {}): Scene =>
  new Drawing(charted.ground, size, units, options).scene(charted);
