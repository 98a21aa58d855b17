import type { BallState, PlanePoint } from '@leeway/engine';
import type { Cover } from '../ground/cover.ts';
import { ringsOn } from '../ground/cover.ts';
import type { Line, Mark, Xy } from '../marks.ts';
import { keepWhere, lengthPx, placeOn, shut } from '../plane/line.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { drawnLie } from './lieGrid.ts';

/** How far on to the land the lines of a bank reach: so many metres, and no more px than that. */
const REACH = { m: 2.6, px: 12 };
/** Strokes between two lines of a bank: the finest that leaves them apart. */
const INTERVALS = [0.1, 0.25, 0.5];
const APART_PX = 1.15;
/** Usual price of a wet ball, for choosing among the intervals. */
const USUAL = 1.1;
/** The bank is looked at each so many px, and so far to both sides of it. */
const STEP_PX = 5;
const LOOK_M = 1;

/** How far the lines of a bank reach on to the land, px. */
export const bankReachPx = (sheet: Sheet): number => Math.min(REACH.px, REACH.m * sheet.pxPerM);

/**
 * Along a bank strokes jump by about one: there all lines between the strokes on land and those in the water lie on one another. They are drawn side by
 * side on the land, as a chart draws a cliff: none where the water costs nothing, more the dearer it is. They are a sign of the jump, not
 * places of its values, and carry none.
 */
export function bankLines(
  sheet: Sheet,
  cover: Cover,
  hides: (q: Xy) => boolean,
  strokesAtRest: (p: PlanePoint, from: BallState) => number,
  from: BallState,
): Mark[] {
  const reach = bankReachPx(sheet);
  const interval = INTERVALS.find((step) => (reach * step) / USUAL >= APART_PX) ?? 0.5;
  const plain: Line[] = [];
  const heavy: Line[] = [];
  const isLand = (q: Xy): boolean =>
    inRect(q, sheet.inner) && drawnLie(cover, q) !== undefined && cover.isCharted(q) && !hides(q);
  for (const [index, area] of cover.areas.entries()) {
    if (area.surface !== 'penalty') continue;
    const seen = (q: Xy): boolean => inRect(q, sheet.inner) && cover.topAt(q) <= index;
    for (const ring of ringsOn(sheet, [area.polygon])) {
      for (const edge of keepWhere(shut(ring), seen)) {
        const feet = feetOf(edge, sheet, isLand, (q) => strokesAtRest(sheet.toPlane(q), from));
        for (const level of levelsOf(feet, interval)) {
          const lines = linesAt(feet, level, reach).flatMap((l) => keepWhere(l, isLand));
          (Math.abs(level * 2 - Math.round(level * 2)) < 1e-6 ? heavy : plain).push(...lines);
        }
      }
    }
  }
  const mark = { kind: 'stroke', layer: 'contours', role: 'contour', closed: false } as const;
  return [
    { ...mark, lines: plain, widthPx: 0.6, opacity: 0.85 },
    { ...mark, lines: heavy, widthPx: 1.2 },
  ].filter((m) => m.lines.length > 0);
}

/** A place of a bank: the direction to the land, and the strokes on both sides; `undefined` where no land is beside it, or the water costs nothing. */
interface Foot {
  readonly at: Xy;
  readonly landward: Xy;
  readonly dry: number;
  readonly wet: number;
}

function feetOf(
  edge: Line,
  sheet: Sheet,
  isLand: (q: Xy) => boolean,
  strokesAt: (q: Xy) => number,
): (Foot | undefined)[] {
  const look = Math.max(2.5, LOOK_M * sheet.pxPerM);
  const whole = lengthPx(edge);
  const found: (Foot | undefined)[] = [];
  for (let s = 0; s <= whole; s += STEP_PX) {
    const [a, at, b] = [placeOn(edge, s - 3), placeOn(edge, s), placeOn(edge, s + 3)];
    if (!a || !at || !b) continue;
    const step = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const [x, y] = [(b.y - a.y) / step, (a.x - b.x) / step];
    const to = (px: number): Xy => ({ x: at.x + x * px, y: at.y + y * px });
    const side = isLand(to(look)) ? 1 : isLand(to(-look)) ? -1 : 0;
    if (side === 0) found.push(undefined);
    else {
      const [dry, wet] = [strokesAt(to(side * look)), strokesAt(to(-side * look))];
      found.push(dry < wet ? { at, landward: { x: side * x, y: side * y }, dry, wet } : undefined);
    }
  }
  return found;
}

function levelsOf(feet: readonly (Foot | undefined)[], interval: number): number[] {
  const values = feet.flatMap((f) => (f ? [f.dry, f.wet] : []));
  const first = Math.ceil(Math.min(...values) / interval);
  const last = Math.floor(Math.max(...values) / interval);
  return values.length === 0 ? [] : Array.from({ length: last - first + 1 }, (_, i) => (first + i) * interval);
}

/** One level along a bank: as far from the water as it is from the strokes in it. */
function linesAt(feet: readonly (Foot | undefined)[], level: number, reach: number): Line[] {
  const lines: Xy[][] = [];
  let line: Xy[] | undefined;
  for (const foot of feet) {
    if (foot === undefined || level <= foot.dry || level >= foot.wet) {
      line = undefined;
      continue;
    }
    const px = (reach * (foot.wet - level)) / (foot.wet - foot.dry);
    if (line === undefined) lines.push((line = []));
    line.push({ x: foot.at.x + foot.landward.x * px, y: foot.at.y + foot.landward.y * px });
  }
  return lines.filter((l) => l.length > 1);
}
