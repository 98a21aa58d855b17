import { contours } from 'd3-contour';
import type { Line, Xy } from '../marks.ts';
import { keepWhere, lengthPx, shut } from '../plane/line.ts';
import type { Raster } from './field.ts';

/** One piece of a stroke contour as it is drawn. */
export interface Contour {
  /** Expected strokes to hole out along it. */
  readonly strokes: number;
  /** Each 0.5 is heavy, each 0.05 between the tenths hair-thin. */
  readonly weight: 'heavy' | 'plain' | 'hair';
  readonly line: Line;
}

const FROM = 1.8;
/** Shorter rings are a solver's freckles, not ground. */
const SHORTEST_RING_PX = 150;
const SHORTEST_PIECE_PX = 18;

/** The contours of a raster where `keep` holds: each 0.1 from 1.8 up, and each 0.05 where `hairs`. */
export function contoursOf(raster: Raster, keep: (q: Xy, strokes: number) => boolean, hairs: boolean): Contour[] {
  const highest = raster.values.reduce((high, v) => (v > high ? v : high), 0);
  const step = hairs ? 5 : 10;
  const hundredths: number[] = [];
  for (let h = FROM * 100; h <= highest * 100; h += step) hundredths.push(h);
  const shapes = contours()
    .size([raster.columns, raster.rows])
    .thresholds(hundredths.map((h) => h / 100))(Array.from(raster.values));
  return shapes.flatMap((shape) => {
    const h = Math.round(shape.value * 100);
    const weight = h % 50 === 0 ? 'heavy' : h % 10 === 0 ? 'plain' : 'hair';
    const rings = shape.coordinates.flat().map((ring) => ring.slice(1).map((at) => onPaper(at, raster)));
    return rings
      .map(shut)
      .filter((ring) => lengthPx(ring) >= SHORTEST_RING_PX)
      .flatMap((ring) => joined(keepWhere(rounded(ring), (q) => keep(q, h / 100), 1.2)))
      .filter((line) => lengthPx(line) >= SHORTEST_PIECE_PX)
      .map((line): Contour => ({ strokes: h / 100, weight, line }));
  });
}

/** Cell (0, 0) has its middle at (0.5, 0.5) in the library's plane. */
const onPaper = ([column = 0, row = 0]: readonly number[], raster: Raster): Xy => ({
  x: raster.left + (column - 0.5) * raster.stepPx,
  y: raster.top + (row - 0.5) * raster.stepPx,
});

/** One round of corner cutting (Chaikin 1974): each corner becomes two, a quarter of the way along its sides. */
function rounded(ring: Line): Line {
  const found: Xy[] = [];
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1]!, ring[i]!];
    found.push({ x: 0.75 * a.x + 0.25 * b.x, y: 0.75 * a.y + 0.25 * b.y });
    found.push({ x: 0.25 * a.x + 0.75 * b.x, y: 0.25 * a.y + 0.75 * b.y });
  }
  return shut(found);
}

/** A ring is cut where it happens to begin: its last piece and its first are one. */
function joined(pieces: readonly Line[]): Line[] {
  const [first] = pieces;
  const last = pieces.at(-1);
  if (!first || !last || pieces.length < 2) return [...pieces];
  const [head, tail] = [first[0], last.at(-1)];
  if (!head || !tail || Math.hypot(head.x - tail.x, head.y - tail.y) > 1e-6) return [...pieces];
  return [[...last, ...first.slice(1)], ...pieces.slice(1, -1)];
}
