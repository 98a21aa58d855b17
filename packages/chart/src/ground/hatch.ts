import type { Random } from '@leeway/engine';
import type { Line, Xy } from '../marks.ts';

/** Places on a grid of `stepPx` over the box of some rings, each moved by up to `jitter` of a step. Every second row is offset by half a step. */
export function jittered(
  rings: readonly Line[],
  { stepPx, jitter }: { readonly stepPx: number; readonly jitter: number },
  random: Random,
): Xy[] {
  const all = rings.flat();
  const bounds = all.reduce(
    (b, p) => ({
      left: Math.min(b.left, p.x),
      right: Math.max(b.right, p.x),
      top: Math.min(b.top, p.y),
      bottom: Math.max(b.bottom, p.y),
    }),
    { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity },
  );
  const found: Xy[] = [];
  const off = (): number => (2 * random.next() - 1) * jitter * stepPx;
  for (let row = 0; bounds.top + row * stepPx <= bounds.bottom; row++) {
    const shift = (row % 2) * 0.5 * stepPx;
    for (let x = bounds.left + shift; x <= bounds.right; x += stepPx) {
      found.push({ x: x + off(), y: bounds.top + row * stepPx + off() });
    }
  }
  return found;
}

/** A tuft of three blades on a foot, as a surveyor draws scrub. */
export const tuft = ({ x, y }: Xy, sizePx: number): Line[] => [
  [
    { x: x - 0.62 * sizePx, y: y + 0.4 * sizePx },
    { x: x + 0.62 * sizePx, y: y + 0.4 * sizePx },
  ],
  [
    { x, y: y + 0.4 * sizePx },
    { x, y: y - 0.6 * sizePx },
  ],
  [
    { x: x - 0.1 * sizePx, y: y + 0.4 * sizePx },
    { x: x - 0.55 * sizePx, y: y - 0.35 * sizePx },
  ],
  [
    { x: x + 0.1 * sizePx, y: y + 0.4 * sizePx },
    { x: x + 0.55 * sizePx, y: y - 0.35 * sizePx },
  ],
];
