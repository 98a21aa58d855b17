import type { Line, Mark, Scene } from '../marks.ts';
import type { Size } from '../sheet.ts';

/** Strokes of one row of the account, four times in five between the whiskers. */
export interface Bar {
  readonly mean: number;
  readonly lo80: number;
  readonly hi80: number;
  /** More than chance would bring. */
  readonly shown: boolean;
}

/** From which to which figure the bars of a table are drawn. */
export interface StrokesScale {
  readonly from: number;
  readonly to: number;
}

const HATCH_PX = 5;
const BAR_SHARE = 0.5;
const DASH_PX = 4;
const EVERY = 0.5;

/** One bar of the account: slant hatch where it is more than chance, broken lines where it may be chance, and its whiskers. */
export function barScene(bar: Bar, scale: StrokesScale, size: Size, words: string): Scene {
  const { widthPx, heightPx } = size;
  const x = (strokes: number): number =>
    (widthPx * (Math.max(scale.from, Math.min(scale.to, strokes)) - scale.from)) / (scale.to - scale.from);
  const middle = heightPx / 2;
  const half = (heightPx * BAR_SHARE) / 2;
  const [left, right] = [Math.min(x(0), x(bar.mean)), Math.max(x(0), x(bar.mean))];
  const upright = (at: number, by: number): Line => [
    { x: at, y: middle - by },
    { x: at, y: middle + by },
  ];
  const level = (y: number, from = left, to = right): Line => [
    { x: from, y },
    { x: to, y },
  ];
  const stroke = (lines: readonly Line[], thickPx: number, role: 'ink' | 'ink-2' = 'ink'): Mark => ({
    kind: 'stroke',
    layer: 'lines',
    role,
    lines,
    closed: false,
    widthPx: thickPx,
  });
  const ticks: Line[] = [];
  for (let at = Math.ceil(scale.from / EVERY) * EVERY; at <= scale.to; at += EVERY)
    ticks.push([
      { x: x(at), y: 0 },
      { x: x(at), y: heightPx },
    ]);
  const marks: Mark[] = [
    { ...stroke(ticks, 0.6, 'ink-2'), opacity: 0.35 },
    stroke(
      [
        [
          { x: x(0), y: 0 },
          { x: x(0), y: heightPx },
        ],
      ],
      1,
    ),
    ...(bar.shown
      ? [stroke([level(middle - half), level(middle + half), ...hatch(left, right, middle, half)], 1)]
      : [
          stroke(
            [middle - half, middle, middle + half].flatMap((y) => broken(left, right, y)),
            1,
          ),
        ]),
    stroke([upright(x(bar.mean), half + 2)], 2.4),
    stroke([level(middle, x(bar.lo80), x(bar.hi80)), upright(x(bar.lo80), 4), upright(x(bar.hi80), 4)], 1.2),
  ];
  return {
    ...size,
    placing: { origin: { x: 0, y: 0 }, pxPerM: 1, upRad: 0 },
    title: words,
    description: words,
    marks,
  };
}

function hatch(left: number, right: number, middle: number, half: number): Line[] {
  const lines: Line[] = [];
  for (let at = left - 2 * half; at < right; at += HATCH_PX) {
    const [from, to] = [Math.max(left, at), Math.min(right, at + 2 * half)];
    if (to > from)
      lines.push([
        { x: from, y: middle + half - (from - at) },
        { x: to, y: middle + half - (to - at) },
      ]);
  }
  return lines;
}

function broken(left: number, right: number, y: number): Line[] {
  const lines: Line[] = [];
  for (let at = left; at < right; at += 2 * DASH_PX)
    lines.push([
      { x: at, y },
      { x: Math.min(right, at + DASH_PX), y },
    ]);
  return lines;
}
