/**
 * The loops that most of a solve is spent in, over one room of memory. Arguments that are addresses are byte offsets in the room,
 * multiples of four (records and grids of sixteen), laid out as `layout.ts` says.
 */
export interface Kernel {
  readonly kind: 'vector' | 'plain';
  /** The room: never grown, so views of it stay good. */
  readonly buffer: ArrayBuffer;
  /**
   * Blurs a patch of a grid of float32 on to another of the same step, or of twice the step: output (c, r) is the sum over k, l of
   * tap k times tap l times input (s c + first + k, s r + first + l), s = 1 or 2; places beyond the input's edge are as at its edge.
   * The taps are the first floats of `work`, which has room for `blurFloats`.
   */
  readonly blur: (
    from: number,
    fromColumns: number,
    fromRows: number,
    to: number,
    toColumns: number,
    taps: number,
    first: number,
    halves: boolean,
    c0: number,
    c1: number,
    r0: number,
    r1: number,
    work: number,
  ) => void;
  /**
   * The mean over a stroke's clouds of what the ground under them costs, for a stroke from (u, v) along (sin, cos): bilinear reads of
   * the levels that its parts name, or of the near ones for clouds whose centre is inside the near box. Places beyond a
   * grid read its edge. Clouds whose wet share is above `least` are listed, the wet balls of the others put together. Written to `out`.
   */
  readonly sum: (clouds: number, u: number, v: number, sin: number, cos: number, least: number, out: number) => void;
}
