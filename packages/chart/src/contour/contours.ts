import type { Line, Xy } from '../marks.ts';
import { keepWhere, lengthPx } from '../plane/line.ts';
import type { ContourGrid, LieGrid } from './lieGrid.ts';
import { march } from './march.ts';
import { smoothed, spread } from './spread.ts';

/** One piece of a stroke contour as it is drawn. */
export interface Contour {
  /** Expected strokes to hole out along it. */
  readonly strokes: number;
  /** Each 0.5 is heavy, each 0.05 between the tenths hair-thin. */
  readonly weight: 'heavy' | 'plain' | 'hair';
  readonly line: Line;
}

const FROM = 1.8;
/** Shorter rings, and narrower ones, are a solver's freckles, not ground. */
const SHORTEST_RING_PX = 150;
/** Twice the area of a ring over its length: about how wide it is, if it is narrow. */
const NARROWEST_RING_PX = 14;
const SHORTEST_PIECE_PX = 30;

/**
 * The contours of strokes over a grid, each 0.1 from 1.8 up, and each 0.05 where `hairs`. Strokes jump where the lie changes, so each lie has its
 * own lines, worked from its own nodes alone; `keep` cuts them at its edge and wherever else none may be drawn.
 */
export function contoursOf(
  grid: ContourGrid,
  strokesAt: (q: Xy) => number,
  keep: (q: Xy, lie: LieGrid['lie']) => boolean,
  hairs: boolean,
): Contour[] {
  return grid.lies.flatMap((part) => {
    const values = strokesOn(grid, part, strokesAt);
    return march(values, grid, levelsTo(values, hairs ? 5 : 10)).flatMap(({ level, lines }) => {
      const hundredths = Math.round(100 * level);
      const weight = hundredths % 50 === 0 ? 'heavy' : hundredths % 10 === 0 ? 'plain' : 'hair';
      return lines
        .filter((line) => !isFreckle(line))
        .flatMap((line) => joined(keepWhere(rounded(line), (q) => keep(q, part.lie))))
        .filter((line) => lengthPx(line) >= SHORTEST_PIECE_PX)
        .map((line): Contour => ({ strokes: level, weight, line }));
    });
  });
}

/** Levels from 1.8 to the highest of some values. */
function levelsTo(values: Float64Array, stepHundredths: number): number[] {
  let highest = 0;
  for (const v of values) if (v > highest) highest = v;
  const steps = Math.floor(((highest - FROM) * 100) / stepHundredths + 1e-9);
  return Array.from({ length: Math.max(0, steps + 1) }, (_, k) => (100 * FROM + k * stepHundredths) / 100);
}

/** Strokes on a lie's nodes, smoothed, and a little beyond its edge. Nodes whose strokes are not known take no part. */
function strokesOn(grid: ContourGrid, { nodes, weights }: LieGrid, strokesAt: (q: Xy) => number): Float64Array {
  const { columns, rows, left, top, stepPx, kernel } = grid;
  const values = new Float64Array(columns * rows);
  for (const i of nodes)
    values[i] = strokesAt({ x: left + (i % columns) * stepPx, y: top + Math.floor(i / columns) * stepPx });
  const known = nodes.filter((i) => Number.isFinite(values[i]));
  if (known.length === nodes.length) return smoothed(values, nodes, weights, columns, kernel);
  const ones = new Float64Array(values.length);
  for (const i of known) ones[i] = 1;
  return smoothed(
    values.map((v) => (Number.isFinite(v) ? v : 0)),
    known,
    spread(ones, columns, kernel),
    columns,
    kernel,
  );
}

const isClosed = (line: Line): boolean => {
  const [first, last] = [line[0], line.at(-1)];
  return first !== undefined && last !== undefined && line.length > 2 && first.x === last.x && first.y === last.y;
};
/** A ring that is short, or a sliver. */
function isFreckle(line: Line): boolean {
  if (!isClosed(line)) return false;
  const round = lengthPx(line);
  let twice = 0;
  for (let i = 1; i < line.length; i++) twice += line[i - 1]!.x * line[i]!.y - line[i]!.x * line[i - 1]!.y;
  return round < SHORTEST_RING_PX || Math.abs(twice) / round < NARROWEST_RING_PX;
}

/** One round of corner cutting (Chaikin 1974): each corner becomes two, a quarter of the way along its sides. Ends stay. */
function rounded(line: Line): Line {
  const found: Xy[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    found.push({ x: 0.75 * a.x + 0.25 * b.x, y: 0.75 * a.y + 0.25 * b.y });
    found.push({ x: 0.25 * a.x + 0.75 * b.x, y: 0.25 * a.y + 0.75 * b.y });
  }
  const [first, last] = [line[0], line.at(-1)];
  if (!first || !last || !found[0]) return line;
  return isClosed(line) ? [...found, found[0]] : [first, ...found, last];
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
