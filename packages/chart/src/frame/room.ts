import type { Surface } from '@leeway/engine';
import type { Painted } from '../ground/painted.ts';
import type { Xy } from '../marks.ts';
import type { Rect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { ROSE_PX } from './rose.ts';

interface Weighed extends Xy {
  readonly weight: number;
}

/** What it costs to cover a place of each kind of ground; ground off the hole is free. */
const WEIGHTS: { readonly [S in Surface | 'unmapped']: number } = {
  unmapped: 0,
  out: 0.05,
  rough: 1,
  recovery: 2,
  fairway: 6,
  tee: 20,
  bunker: 8,
  penalty: 3,
  green: 40,
};
const PLAY_WEIGHT = 400;
const STEP_PX = 12;

/** Corners for the title block and a place for the rose that hide least of the hole, and nothing of the play if that can be had. */
export function findRoom(
  sheet: Sheet,
  painted: Painted,
  play: readonly Xy[],
  title: { readonly widthPx: number; readonly heightPx: number },
): { readonly title: Rect; readonly rose: Xy } {
  const { inner } = sheet;
  const places = [...groundPlaces(sheet, painted), ...play.map((p): Weighed => ({ ...p, weight: PLAY_WEIGHT }))];
  const corners = [true, false].flatMap((bottom) =>
    [false, true].map((left): Rect => {
      const x = left ? inner.left : inner.right - title.widthPx;
      const y = bottom ? inner.bottom - title.heightPx : inner.top;
      return { left: x, top: y, right: x + title.widthPx, bottom: y + title.heightPx };
    }),
  );
  const titleRect = least(corners, (r) => hidden(places, (p) => inside(p, r))) ?? {
    left: inner.right - title.widthPx,
    top: inner.bottom - title.heightPx,
    right: inner.right,
    bottom: inner.bottom,
  };
  const asides = [inner.right - ROSE_PX - 42, inner.left + ROSE_PX + 42];
  const roses: Xy[] = [];
  for (let y = inner.top + ROSE_PX + 14; y <= inner.bottom - ROSE_PX - 14; y += 20)
    for (const x of asides) if (clears({ x, y }, titleRect)) roses.push({ x, y });
  const rose = least(roses, (at) => hidden(places, (p) => Math.hypot(p.x - at.x, p.y - at.y) < ROSE_PX + 4));
  return { title: titleRect, rose: rose ?? { x: inner.right - ROSE_PX, y: inner.top + ROSE_PX } };
}

function groundPlaces(sheet: Sheet, painted: Painted): Weighed[] {
  const { inner } = sheet;
  const found: Weighed[] = [];
  for (let y = inner.top + STEP_PX / 2; y < inner.bottom; y += STEP_PX)
    for (let x = inner.left + STEP_PX / 2; x < inner.right; x += STEP_PX)
      found.push({ x, y, weight: WEIGHTS[painted.surfaceAt(sheet.toPlane({ x, y }))] });
  return found;
}

const hidden = (places: readonly Weighed[], covers: (p: Xy) => boolean): number =>
  places.reduce((sum, p) => (covers(p) ? sum + p.weight : sum), 0);

const inside = (p: Xy, r: Rect): boolean => p.x >= r.left && p.x <= r.right && p.y >= r.top && p.y <= r.bottom;

/** Is a rose here at least its own radius and a little more from a rectangle? */
const clears = (at: Xy, r: Rect): boolean =>
  Math.hypot(at.x - Math.min(r.right, Math.max(r.left, at.x)), at.y - Math.min(r.bottom, Math.max(r.top, at.y))) >
  ROSE_PX + 6;

function least<T>(candidates: readonly T[], costOf: (c: T) => number): T | undefined {
  let [best, lowest]: [T | undefined, number] = [undefined, Infinity];
  for (const c of candidates) {
    const cost = costOf(c);
    if (cost < lowest) [best, lowest] = [c, cost];
  }
  return best;
}
