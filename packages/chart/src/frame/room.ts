import type { Surface } from '@leeway/engine';
import type { Cover } from '../ground/cover.ts';
import type { Xy } from '../marks.ts';
import { inRect, type Rect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';

/** The blocks that a sheet carries, and how large. */
export interface Wanted {
  readonly title: { readonly widthPx: number; readonly heightPx: number } | undefined;
  /** Radius of the rose's clear disc, and the box of the wind's words under it. */
  readonly rose: { readonly radiusPx: number; readonly wordsWidthPx: number; readonly wordsHeightPx: number };
}

/** Where the blocks of a sheet stand. */
export interface Room {
  readonly title: Rect | undefined;
  readonly rose: RoseRoom;
}
export interface RoseRoom {
  readonly at: Xy;
  readonly radiusPx: number;
  readonly words: Rect | undefined;
}

/** Is a place under one of the blocks? */
export const roomHides = ({ title, rose }: Room, q: Xy): boolean =>
  (title !== undefined && inRect(q, title)) || roseHides(rose, q);

const roseHides = ({ at, radiusPx, words }: RoseRoom, q: Xy): boolean =>
  Math.hypot(q.x - at.x, q.y - at.y) < radiusPx || (words !== undefined && inRect(q, words));

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
/** From the rose's disc to the frame, and to the title block. */
const ROSE_RIM_PX = 6;

/** A corner for the title block and a place for the rose that hide least of the hole, and nothing of the play if that can be had. */
export function findRoom(sheet: Sheet, cover: Cover, play: readonly Xy[], wanted: Wanted): Room {
  const places = [...groundPlaces(sheet, cover), ...play.map((p): Weighed => ({ ...p, weight: PLAY_WEIGHT }))];
  const title = wanted.title && least(corners(sheet, wanted.title), (r) => hidden(places, (p) => inRect(p, r)));
  const roses = rosePlaces(sheet, wanted.rose, title);
  const [first] = roses;
  if (first === undefined) throw new RangeError('the sheet is too small for a rose');
  return { title, rose: least(roses, (r) => hidden(places, (p) => roseHides(r, p))) ?? first };
}

function corners({ inner }: Sheet, { widthPx, heightPx }: NonNullable<Wanted['title']>): Rect[] {
  return [true, false].flatMap((bottom) =>
    [false, true].map((left): Rect => {
      const x = left ? inner.left : inner.right - widthPx;
      const y = bottom ? inner.bottom - heightPx : inner.top;
      return { left: x, top: y, right: x + widthPx, bottom: y + heightPx };
    }),
  );
}

/** Places down both sides, inward of the figures of the margin rule; those on the title block last. */
function rosePlaces({ inner, phone }: Sheet, rose: Wanted['rose'], title: Rect | undefined): RoseRoom[] {
  const { radiusPx, wordsWidthPx, wordsHeightPx } = rose;
  const half = Math.max(radiusPx, wordsWidthPx / 2);
  const right = inner.right - half - (phone ? ROSE_RIM_PX : FIGURES_PX);
  const found: RoseRoom[] = [];
  const last = inner.bottom - radiusPx - wordsHeightPx - ROSE_RIM_PX;
  for (let y = inner.top + radiusPx + ROSE_RIM_PX; y <= last; y += 20) {
    for (const x of [right, inner.left + half + FIGURES_PX]) {
      const words: Rect | undefined =
        wordsHeightPx === 0
          ? undefined
          : {
              left: x - wordsWidthPx / 2,
              right: x + wordsWidthPx / 2,
              top: y + radiusPx,
              bottom: y + radiusPx + wordsHeightPx,
            };
      found.push({ at: { x, y }, radiusPx, words });
    }
  }
  const clear = found.filter((r) => title === undefined || !meetsRect(r, title));
  return clear.length > 0 ? clear : found;
}

/** Room for the figures of a margin rule. */
const FIGURES_PX = 42;
function meetsRect({ at, radiusPx, words }: RoseRoom, r: Rect): boolean {
  const x = at.x - Math.min(r.right, Math.max(r.left, at.x));
  const y = at.y - Math.min(r.bottom, Math.max(r.top, at.y));
  if (Math.hypot(x, y) < radiusPx + ROSE_RIM_PX) return true;
  return (
    words !== undefined &&
    words.left < r.right &&
    r.left < words.right &&
    words.top < r.bottom &&
    r.top < words.bottom + ROSE_RIM_PX
  );
}

function groundPlaces({ inner }: Sheet, cover: Cover): Weighed[] {
  const found: Weighed[] = [];
  for (let y = inner.top + STEP_PX / 2; y < inner.bottom; y += STEP_PX)
    for (let x = inner.left + STEP_PX / 2; x < inner.right; x += STEP_PX)
      found.push({ x, y, weight: cover.isCharted({ x, y }) ? WEIGHTS[cover.surfaceAt({ x, y })] : 0 });
  return found;
}

const hidden = (places: readonly Weighed[], covers: (p: Xy) => boolean): number =>
  places.reduce((sum, p) => (covers(p) ? sum + p.weight : sum), 0);

function least<T>(candidates: readonly T[], costOf: (c: T) => number): T | undefined {
  let [best, lowest]: [T | undefined, number] = [undefined, Infinity];
  for (const c of candidates) {
    const cost = costOf(c);
    if (cost < lowest) [best, lowest] = [c, cost];
  }
  return best;
}
