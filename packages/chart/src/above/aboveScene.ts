import { YARD_M } from '@leeway/engine';
import { inOrder, type Line, type Mark, type Scene, type Text, type Xy } from '../marks.ts';
import { dashed, keepWhere } from '../plane/line.ts';
import { inRect, quadOf, type Rect } from '../plane/quad.ts';
import type { Size } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { type FromAbove, type Pitched, windowOf } from './above.ts';
import { density, HELD, heldLines } from './heldLines.ts';

const BAR_PX = 7;
const MARGIN_PX = 12;
const DOT_PX = 1.9;
const RING_PX = 3;
const CROSS_PX = 2.6;
const STEPS = [10, 20, 50, 100] as const;
const APART_PX = 30;

/** How the ground lies on the sheet. */
interface Laid {
  readonly inner: Rect;
  readonly pxPerM: number;
  readonly unitM: number;
  readonly fromM: number;
  readonly toM: number;
  readonly at: (p: Pick<Pitched, 'alongM' | 'acrossM'>) => Xy;
}

/**
 * Balls of one club and swing from above, the line of aim straight up, one scale both ways: good strikes as dots, mishits as rings, lines that hold 50, 80 and 95
 * balls in 100, cross lines at whole distances, and a bar of ten units a piece at the left. `placing.origin` is where the balls were hit.
 */
export function aboveScene(above: FromAbove, { widthPx, heightPx }: Size): Scene {
  const inner = { left: MARGIN_PX, top: MARGIN_PX, right: widthPx - MARGIN_PX, bottom: heightPx - MARGIN_PX };
  const laid = layOut(above, inner);
  const paper = quadOf({ left: 0, top: 0, right: widthPx, bottom: heightPx });
  return {
    widthPx,
    heightPx,
    placing: { origin: laid.at({ alongM: 0, acrossM: 0 }), pxPerM: laid.pxPerM, upRad: 0 },
    title: above.title,
    description: described(above, laid.unitM),
    marks: inOrder([
      { kind: 'fill', layer: 'tint', role: 'sheet', rings: [paper] },
      ...crossLines(laid),
      ...patternMarks(above, laid),
      ...ballMarks(above, laid),
      ...toldMarks(above, laid),
      ...frameMarks(laid, widthPx, heightPx),
    ]),
  };
}

function layOut(above: FromAbove, inner: Rect): Laid {
  const wanted = windowOf(above);
  const [wide, high] = [inner.right - inner.left, inner.bottom - inner.top];
  const pxPerM = Math.min(high / (wanted.toM - wanted.fromM), wide / 2 / wanted.sideM);
  const middle = (wanted.fromM + wanted.toM) / 2;
  const fromM = Math.max(0, middle - high / 2 / pxPerM);
  const centre = (inner.left + inner.right) / 2;
  return {
    inner,
    pxPerM,
    unitM: above.units === 'yd' ? YARD_M : 1,
    fromM,
    toM: fromM + high / pxPerM,
    at: ({ alongM, acrossM }) => ({ x: centre + acrossM * pxPerM, y: inner.bottom - (alongM - fromM) * pxPerM }),
  };
}

const words = (text: string, at: Xy, anchor: Text['anchor'], bold = false, role: Text['role'] = 'ink-2'): Text => ({
  kind: 'text',
  layer: 'names',
  role,
  text,
  font: sans(12.5, bold ? 600 : 500),
  at,
  anchor,
  turnRad: 0,
  haloPx: 3,
});

const line = (lines: readonly Line[], widthPx: number, layer: Mark['layer'], role: Mark['role'] = 'ink'): Mark => ({
  kind: 'stroke',
  layer,
  role,
  lines,
  closed: false,
  widthPx,
});

/** Whole distances across the sheet with their figures, and the line of aim, dotted. */
function crossLines({ inner, pxPerM, unitM, fromM, toM, at }: Laid): readonly Mark[] {
  const step = STEPS.find((n) => n * unitM * pxPerM >= APART_PX) ?? 100;
  const marks: Mark[] = [];
  for (let n = step * Math.ceil((fromM / unitM + 1e-6) / step); n * unitM < toM; n += step) {
    const { y } = at({ alongM: n * unitM, acrossM: 0 });
    const across = [
      { x: inner.left, y },
      { x: inner.right, y },
    ];
    marks.push({ ...line([across], 0.6, 'tint', 'ink-2'), opacity: 0.4 });
    if (y - inner.top > 8 && inner.bottom - y > 6) marks.push(words(`${n}`, { x: inner.left + 6, y: y + 4 }, 'start'));
  }
  const { x } = at({ alongM: 0, acrossM: 0 });
  const aim = [
    { x, y: inner.bottom },
    { x, y: inner.top },
  ];
  marks.push(line(dashed(aim, [1.6, 3]), 1, 'flagline'));
  const side = STEPS.find((n) => n * unitM * pxPerM >= APART_PX) ?? 100;
  for (let n = side; at({ alongM: 0, acrossM: n * unitM }).x < inner.right - 16; n += side)
    for (const sign of [-1, 1]) {
      const foot = { x: at({ alongM: 0, acrossM: sign * n * unitM }).x, y: inner.bottom };
      if (foot.x < inner.left + 36) continue;
      marks.push(line([[foot, { x: foot.x, y: foot.y - 6 }]], 0.9, 'frame'));
      marks.push(words(`${n}`, { x: foot.x, y: foot.y - 10 }, 'middle'));
    }
  return marks;
}

function patternMarks({ parts }: FromAbove, { inner, pxPerM, fromM, at }: Laid): readonly Mark[] {
  if (parts === undefined || parts.length === 0) return [];
  const middle = at({ alongM: 0, acrossM: 0 }).x;
  const levels = heldLines(inner, pxPerM, ({ x, y }) =>
    density(parts, fromM + (inner.bottom - y) / pxPerM, (x - middle) / pxPerM),
  );
  return levels.flatMap(({ lines }, i): Mark[] => {
    const [balls, widthPx] = HELD[i] ?? [0, 1];
    const kept = lines.flatMap((l) => keepWhere(l, (q) => inRect(q, inner)));
    const free = { left: inner.left + 30, top: inner.top + 10, right: inner.right - 12, bottom: inner.bottom - 26 };
    const foot = kept
      .flat()
      .filter((p) => inRect(p, free))
      .reduce<Xy | undefined>((best, p) => (best && best.x + best.y > p.x + p.y ? best : p), undefined);
    const figure =
      foot === undefined ? [] : [{ ...words(`${balls}`, { x: foot.x, y: foot.y + 4 }, 'middle', true, 'contour') }];
    return [line(kept, widthPx, 'contours', 'contour'), ...figure];
  });
}

function ballMarks({ balls, before = [] }: FromAbove, { inner, at }: Laid): readonly Mark[] {
  const placed = (of: readonly Pitched[]): Xy[] => of.map(at).filter((p) => inRect(p, inner));
  const crosses = placed(before).flatMap(({ x, y }): Line[] => [
    [
      { x: x - CROSS_PX, y: y - CROSS_PX },
      { x: x + CROSS_PX, y: y + CROSS_PX },
    ],
    [
      { x: x - CROSS_PX, y: y + CROSS_PX },
      { x: x + CROSS_PX, y: y - CROSS_PX },
    ],
  ]);
  const dots = { kind: 'dots', layer: 'pattern', role: 'ink' } as const;
  return [
    ...(crosses.length === 0 ? [] : [line(crosses, 1, 'pattern', 'contour')]),
    { ...dots, at: placed(balls.filter((b) => !b.mishit)), radiusPx: DOT_PX },
    { ...dots, at: placed(balls.filter((b) => b.mishit)), radiusPx: RING_PX, lineWidthPx: 1 },
  ];
}

/** The ball that is being told: a ring and a dot, with broken lines to the left edge and to the foot. */
function toldMarks({ told }: FromAbove, { inner, at }: Laid): readonly Mark[] {
  if (told === undefined) return [];
  const p = at(told);
  if (!inRect(p, inner)) return [];
  const lead = [
    [
      { x: p.x, y: p.y + 10 },
      { x: p.x, y: inner.bottom },
    ],
    [
      { x: p.x - 10, y: p.y },
      { x: inner.left, y: p.y },
    ],
  ].flatMap((l) => dashed(l, [3, 3]));
  return [
    line(lead, 1, 'lines'),
    { kind: 'dots', layer: 'signs', role: 'sheet', at: [p], radiusPx: 8.5 },
    { kind: 'dots', layer: 'signs', role: 'ink', at: [p], radiusPx: 8.5, lineWidthPx: 2 },
    { kind: 'dots', layer: 'signs', role: 'ink', at: [p], radiusPx: 3 },
  ];
}

function frameMarks({ inner, unitM, fromM, toM, at }: Laid, widthPx: number, heightPx: number): readonly Mark[] {
  const box = (inset: number): Line =>
    quadOf({ left: inset, top: inset, right: widthPx - inset, bottom: heightPx - inset });
  const closed = { kind: 'stroke', layer: 'frame', role: 'ink', closed: true } as const;
  const bars: Line[] = [];
  for (let n = 20 * Math.floor(fromM / unitM / 20); n * unitM < toM; n += 20) {
    const [top, bottom] = [n + 10, n].map((u) => at({ alongM: u * unitM, acrossM: 0 }).y);
    bars.push(
      quadOf({
        left: inner.left - BAR_PX,
        right: inner.left,
        top: Math.max(inner.top, top ?? 0),
        bottom: Math.min(inner.bottom, bottom ?? 0),
      }),
    );
  }
  return [
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: [box(0), quadOf(inner)] },
    { kind: 'fill', layer: 'frame', role: 'ink', rings: bars.filter(([a, , c]) => a && c && c.y > a.y) },
    { ...closed, lines: [box(1.1)], widthPx: 2.2 },
    { ...closed, lines: [box(inner.left - BAR_PX - 0.5), quadOf(inner)], widthPx: 0.9 },
  ];
}

function described({ balls, units, parts, title }: FromAbove, unitM: number): string {
  const unit = units === 'yd' ? 'yards' : 'metres';
  const mishits = balls.filter((b) => b.mishit).length;
  const [good] = parts ?? [];
  const whole = (m: number): string => (Math.abs(m) / unitM).toFixed(0);
  const mean =
    good === undefined
      ? ''
      : ` Good strikes pitch about ${whole(good.alongM)} ${unit} out, ${whole(good.acrossM)} ${good.acrossM < 0 ? 'left' : 'right'} of the line.`;
  return `${title} from above: ${balls.length} balls, ${mishits} of them mishit.${mean}`;
}
