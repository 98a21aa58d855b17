import type { Line, Mark, Xy } from '../marks.ts';
import { circle } from '../plane/line.ts';

export const ROSE_PX = 54;
const RING_PX = 38;

/** The rose: a ring of 5 degree ticks, a star of eight points, half of each black, and a fleur at true north. `northRad` is its turn on paper. */
export function rose(at: Xy, northRad: number): Mark[] {
  const place = (turn: number, radius: number): Xy => ({
    x: at.x + radius * Math.sin(turn + northRad),
    y: at.y - radius * Math.cos(turn + northRad),
  });
  const line = { kind: 'stroke', layer: 'frame', role: 'ink', closed: false } as const;
  const ticks: Line[] = Array.from({ length: 72 }, (_, i) => {
    const turn = (i * Math.PI) / 36;
    return [place(turn, RING_PX - 4.5), place(turn, RING_PX - (i % 6 === 0 ? 9 : i % 2 === 0 ? 7.5 : 6))];
  });
  const black: Line[] = [];
  const points: Line[] = [];
  for (let i = 0; i < 8; i++) {
    const order = i % 2 === 1 ? i : (i + 8) % 16;
    const turn = (order * Math.PI) / 4;
    const tip = place(turn, i % 2 === 0 ? 27 : 17);
    const [left, right] = [place(turn - Math.PI / 8, 6), place(turn + Math.PI / 8, 6)];
    black.push([at, tip, right]);
    points.push([at, left, tip, right]);
  }
  return [
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: [circle(at, ROSE_PX)] },
    { ...line, lines: [circle(at, RING_PX, 72), circle(at, RING_PX - 4.5, 72)], closed: true, widthPx: 0.8 },
    { ...line, lines: ticks, widthPx: 0.7 },
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: points.slice(0, 1) },
    ...points.map((ring, i): Mark => ({ kind: 'fill', layer: 'frame', role: 'ink', rings: [black[i] ?? ring] })),
    { ...line, lines: points, closed: true, widthPx: 0.7 },
    ...fleur(place),
  ];
}

/** A fleur: a tall petal between two bent ones over a bar, its foot on the ring. */
function fleur(place: (turn: number, radius: number) => Xy): Mark[] {
  const at = (x: number, y: number): Xy => place(Math.atan2(x, RING_PX + y), Math.hypot(x, RING_PX + y));
  const petal: Line = [at(0, 15), at(2.6, 9), at(1.3, 3), at(-1.3, 3), at(-2.6, 9)];
  const bent = (s: number): Line => [
    at(s * 1.6, 3.4),
    at(s * 3.2, 7.6),
    at(s * 5.4, 9.4),
    at(s * 7.4, 7.6),
    at(s * 6.4, 5.4),
    at(s * 5.2, 6.8),
    at(s * 4, 3.4),
  ];
  const bar: Line = [at(-4.4, 3), at(4.4, 3), at(4.4, 1), at(-4.4, 1)];
  return [{ kind: 'fill', layer: 'frame', role: 'ink', rings: [petal, bent(-1), bent(1), bar] }];
}
