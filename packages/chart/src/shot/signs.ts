import type { Line, Mark, Xy } from '../marks.ts';
import { circle } from '../plane/line.ts';

const SPOT = { widthPx: 25, linePx: 2.3, dotPx: 2.6, haloPx: 6.4 };

/** The triangle of a spot: equilateral, point up, its middle at the place. */
export const triangle = (at: Xy, widthPx: number): Line => {
  const high = (widthPx * Math.sqrt(3)) / 2;
  return [
    { x: at.x, y: at.y - (2 / 3) * high },
    { x: at.x + widthPx / 2, y: at.y + high / 3 },
    { x: at.x - widthPx / 2, y: at.y + high / 3 },
  ];
};

/** The spot: a surveyor's triangulation mark with its halo. The dot is the place. A spot of the user's own is in ink. */
export function spotSign(at: Xy, scale = 1, role: 'buoy' | 'ink' = 'buoy'): Mark[] {
  const lines = [triangle(at, SPOT.widthPx * scale)];
  const sign = { kind: 'stroke', layer: 'signs', lines, closed: true } as const;
  const dot = { kind: 'dots', layer: 'signs', at: [at] } as const;
  return [
    { ...sign, role: 'sheet', widthPx: SPOT.haloPx * scale },
    { ...dot, role: 'sheet', radiusPx: SPOT.dotPx * scale + 1.6 },
    { ...sign, role, widthPx: SPOT.linePx * scale },
    { ...dot, role, radiusPx: SPOT.dotPx * scale },
  ];
}

/** The flag: a ring on its place, a staff, a black pennant. */
export function flagSign(at: Xy): Mark[] {
  const top = { x: at.x, y: at.y - 27 };
  const pennant = [top, { x: at.x + 15, y: at.y - 21.5 }, { x: at.x, y: at.y - 16 }];
  const staff = [{ x: at.x, y: at.y - 3 }, top];
  const stroke = { kind: 'stroke', layer: 'signs', closed: false } as const;
  return [
    { ...stroke, role: 'sheet', lines: [staff, circle(at, 3)], widthPx: 4.4, opacity: 0.8 },
    { kind: 'fill', layer: 'signs', role: 'ink', rings: [pennant] },
    { ...stroke, role: 'ink', lines: [staff], widthPx: 1.5 },
    { kind: 'dots', layer: 'signs', role: 'sheet', at: [at], radiusPx: 3 },
    { kind: 'dots', layer: 'signs', role: 'ink', at: [at], radiusPx: 3, lineWidthPx: 1.4 },
  ];
}

/** The ball: a ring and a dot. */
export const ballSign = (at: Xy): Mark[] => [
  { kind: 'dots', layer: 'signs', role: 'sheet', at: [at], radiusPx: 6.6 },
  { kind: 'dots', layer: 'signs', role: 'ink', at: [at], radiusPx: 6.2, lineWidthPx: 1.6 },
  { kind: 'dots', layer: 'signs', role: 'ink', at: [at], radiusPx: 2.2 },
];
