import type { Line, Mark, Text, Xy } from '../marks.ts';
import { italic, sans } from '../text/fonts.ts';
import { boxOfText } from '../text/measure.ts';
import { quadsMeet } from '../plane/quad.ts';
import type { CarryScale } from './carryScale.ts';
import type { LadderGap } from './ladder.ts';

const HATCH_PX = 7;
const DASH_PX = 1.6;
const SPACE_PX = 2.6;

/** A gap as a shaft of slant hatches between dotted edges, from the top of the ladder to its foot, with its middle and its width below. */
export function gapMarks(
  gaps: readonly LadderGap[],
  scale: CarryScale,
  { topPx, bottomPx }: { readonly topPx: number; readonly bottomPx: number },
): readonly Mark[] {
  const marks: Mark[] = [];
  const set: Text[] = [];
  for (const { fromM, toM } of gaps) {
    const [left, right] = [scale.x(fromM), scale.x(toM)];
    const middle = (left + right) / 2;
    marks.push(
      shaft(hatches(left, right, topPx, bottomPx), 0.5, 'ink-2'),
      shaft([...dotted(left, topPx, bottomPx), ...dotted(right, topPx, bottomPx)], 1, 'ink'),
      {
        kind: 'fill',
        layer: 'frame',
        role: 'ink',
        rings: [[-5, 5, 0].map((dx, i) => ({ x: middle + dx, y: bottomPx + (i === 2 ? 37 : 29) }))],
      },
    );
    const at = ((fromM + toM) / 2 / scale.unitM).toFixed(0);
    const wide = `${((toM - fromM) / scale.unitM).toFixed(0)} wide`;
    for (const text of [
      words(at, { x: middle, y: bottomPx + 54 }, true),
      words(wide, { x: middle, y: bottomPx + 71 }, false),
    ]) {
      if (set.some((other) => quadsMeet(boxOfText(text), boxOfText(other)))) continue;
      set.push(text);
    }
  }
  const heading: Mark[] =
    gaps.length === 0
      ? []
      : [
          {
            kind: 'text',
            layer: 'names',
            role: 'ink',
            text: 'gap at',
            font: italic(16),
            at: { x: 28, y: bottomPx + 54 },
            anchor: 'start',
            turnRad: 0,
            haloPx: 0,
          },
        ];
  return [...marks, ...set, ...heading];
}

const shaft = (lines: readonly Line[], widthPx: number, role: 'ink' | 'ink-2'): Mark => ({
  kind: 'stroke',
  layer: 'contours',
  role,
  lines,
  closed: false,
  widthPx,
});

const words = (text: string, at: Xy, bold: boolean): Text => ({
  kind: 'text',
  layer: 'names',
  role: bold ? 'ink' : 'ink-2',
  text,
  font: bold ? sans(16, 700) : sans(13.5),
  at,
  anchor: 'middle',
  turnRad: 0,
  haloPx: 0,
});

/** Lines that rise to the right at 45 degrees, cut to the shaft. */
function hatches(left: number, right: number, top: number, bottom: number): readonly Line[] {
  const lines: Line[] = [];
  for (let y = top + HATCH_PX; y < bottom + (right - left); y += HATCH_PX) {
    const from = { x: left + Math.max(0, y - bottom), y: Math.min(y, bottom) };
    const length = Math.min(right - from.x, from.y - top);
    if (length > 0.5) lines.push([from, { x: from.x + length, y: from.y - length }]);
  }
  return lines;
}

function dotted(x: number, top: number, bottom: number): readonly Line[] {
  const lines: Line[] = [];
  for (let y = top; y < bottom; y += DASH_PX + SPACE_PX)
    lines.push([
      { x, y },
      { x, y: Math.min(bottom, y + DASH_PX) },
    ]);
  return lines;
}
