import { PNG } from 'pngjs';

/** How two pictures of one size differ, in steps of colour from 0 to 255. */
export interface Difference {
  /** The largest mean difference of any small square: one mark left out or moved shows here. */
  readonly fine: number;
  /** The same of any large square: a tint or a close hatch that is fainter or missing shows here. */
  readonly broad: number;
  /** The mean difference of all: an open hatch that is missing shows here. */
  readonly whole: number;
}

const FINE_PX = 6;
const BROAD_PX = 24;

/** Compares two pictures of the same size, each pixel by the channel that differs most. Throws a RangeError for different sizes. */
export function compare(a: PNG, b: PNG): Difference {
  if (a.width !== b.width || a.height !== b.height)
    throw new RangeError(`pictures of ${a.width} by ${a.height} and of ${b.width} by ${b.height}`);
  const apart = new Uint8Array(a.width * a.height);
  for (let i = 0; i < apart.length; i++) {
    for (const c of [0, 1, 2]) {
      apart[i] = Math.max(apart[i] ?? 0, Math.abs((a.data[4 * i + c] ?? 0) - (b.data[4 * i + c] ?? 0)));
    }
  }
  return {
    fine: worstSquare(apart, a.width, FINE_PX),
    broad: worstSquare(apart, a.width, BROAD_PX),
    whole: apart.reduce((sum, d) => sum + d, 0) / apart.length,
  };
}

/** Is every difference of `found` within that of `most`? */
export const isWithin = (found: Difference, most: Difference): boolean =>
  found.fine <= most.fine && found.broad <= most.broad && found.whole <= most.whole;

function worstSquare(apart: Uint8Array, width: number, sidePx: number): number {
  const height = apart.length / width;
  let worst = 0;
  for (let y = 0; y + sidePx <= height; y += sidePx / 2) {
    for (let x = 0; x + sidePx <= width; x += sidePx / 2) {
      let sum = 0;
      for (let j = y; j < y + sidePx; j++) {
        for (let i = x; i < x + sidePx; i++) sum += apart[j * width + i] ?? 0;
      }
      worst = Math.max(worst, sum / sidePx ** 2);
    }
  }
  return worst;
}

/** A picture made smaller by a whole number: each pixel is the mean of `by` times `by`, which evens out anti-aliasing and hinting. */
export function reduced(picture: PNG, by: number): PNG {
  const [width, height] = [Math.floor(picture.width / by), Math.floor(picture.height / by)];
  const small = new PNG({ width, height });
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      for (const c of [0, 1, 2, 3]) {
        let sum = 0;
        for (let j = 0; j < by; j++) {
          for (let i = 0; i < by; i++) sum += picture.data[4 * ((y * by + j) * picture.width + x * by + i) + c] ?? 0;
        }
        small.data[4 * (y * width + x) + c] = Math.round(sum / by ** 2);
      }
    }
  }
  return small;
}
