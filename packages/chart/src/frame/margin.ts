import type { PlanePoint } from '@leeway/engine';
import type { Labels } from '../labels.ts';
import type { Line, Mark, Text, Xy } from '../marks.ts';
import { type Quad, quadOf } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';

const BAR_PX = 7;
const FIGURE_PX = { sheet: 11.5, phone: 15 };
/** Units of one bar of the margin rule, and room for each of its figures. */
const BAR = { shot: 5, hole: 10, index: 10 } as const;
const LEAST_BAR_PX = 6;
const STEPS = [10, 20, 50, 100, 200] as const;
const APART_PX = { sheet: 46, phone: 38 };

/** Units from one figure to the next: round ones, with room between. */
const figureStep = ({ unitM, pxPerM, phone }: Sheet): number =>
  STEPS.find((n) => n * unitM * pxPerM >= APART_PX[phone ? 'phone' : 'sheet']) ?? 200;

/** The frame: outer line, black-and-white rule graduated from the ball, inner line. */
export function frame(sheet: Sheet): Mark[] {
  const { inner, size } = sheet;
  const box = (inset: number): Line =>
    quadOf({ left: inset, top: inset, right: size.widthPx - inset, bottom: size.heightPx - inset });
  const line = { kind: 'stroke', layer: 'frame', role: 'ink', closed: true } as const;
  const between = inner.left - BAR_PX - 0.5;
  const margin = [box(0), quadOf(inner)];
  return [
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: margin },
    { kind: 'fill', layer: 'frame', role: 'ink', rings: bars(sheet) },
    { ...line, lines: [box(1.1)], widthPx: 2.2 },
    { ...line, lines: [box(between), quadOf(inner)], widthPx: 0.9 },
  ];
}

function bars(sheet: Sheet): Line[] {
  const { inner, size } = sheet;
  const ball = sheet.toPaper(sheet.ball);
  const unitPx = sheet.unitM * sheet.pxPerM;
  const step = unitPx * (BAR[sheet.kind] * unitPx < LEAST_BAR_PX ? 2 : 1) * BAR[sheet.kind];
  const outer = inner.left - BAR_PX;
  const quads: Quad[] = [];
  for (const [from, to] of blacks(ball.y, step, [inner.top, inner.bottom])) {
    quads.push(quadOf({ left: outer, right: inner.left, top: from, bottom: to }));
    if (!sheet.phone) quads.push(quadOf({ left: inner.right, right: size.widthPx - outer, top: from, bottom: to }));
  }
  for (const [from, to] of blacks(ball.x, step, [inner.left, inner.right])) {
    quads.push(quadOf({ left: from, right: to, top: outer, bottom: inner.top }));
    quads.push(quadOf({ left: from, right: to, top: inner.bottom, bottom: size.heightPx - outer }));
  }
  return quads;
}

/** Every second step counted from `origin`, cut to a range. */
function blacks(origin: number, step: number, [low, high]: readonly [number, number]): [number, number][] {
  const found: [number, number][] = [];
  for (let i = 2 * Math.floor((low - origin) / step / 2) - 2; origin + i * step < high; i += 2) {
    const [from, to] = [Math.max(low, origin + i * step), Math.min(high, origin + (i + 1) * step)];
    if (to > from) found.push([from, to]);
  }
  return found;
}

/** The figures of the margin rule: on the left up from the ball, on the right down to the flag when it is straight up the sheet. */
export function marginFigures(sheet: Sheet, flag: PlanePoint, from: string, labels: Labels): Mark[] {
  const { inner } = sheet;
  const ball = sheet.toPaper(sheet.ball);
  const flagAt = sheet.toPaper(flag);
  const left = side(sheet, labels, {
    origin: ball.y,
    down: false,
    x: inner.left,
    inward: 1,
    first: `from the ${from}`,
  });
  // with the flag off the middle line by so little that the rule reads within half a unit of the true distance
  const off = (flagAt.x - ball.x) ** 2 / (2 * (ball.y - flagAt.y)) / sheet.pxPerM;
  const straight = !sheet.phone && flagAt.y < ball.y && off < sheet.unitM / 2;
  const right = straight
    ? side(sheet, labels, { origin: flagAt.y, down: true, x: inner.right, inward: -1, first: 'to the flag' })
    : [];
  return [...left, ...right];
}

interface Side {
  readonly origin: number;
  readonly down: boolean;
  readonly x: number;
  readonly inward: 1 | -1;
  readonly first: string;
}

function side(sheet: Sheet, labels: Labels, { origin, down, x, inward, first }: Side): Mark[] {
  const { inner } = sheet;
  const figure = figureStep(sheet);
  const figurePx = FIGURE_PX[sheet.phone ? 'phone' : 'sheet'];
  const stepPx = figure * sheet.unitM * sheet.pxPerM * (down ? 1 : -1);
  const texts: Text[] = [];
  const ticks: Line[] = [];
  for (let n = 0; ; n++) {
    const y = origin + n * stepPx;
    if (down ? y > inner.bottom - 8 : y < inner.top + 8) break;
    if (y < inner.top + 8 || y > inner.bottom - 8) continue;
    const words = texts.length === 0 && !sheet.phone ? `${n * figure} ${first}` : String(n * figure);
    const text: Text = {
      kind: 'text',
      layer: 'names',
      role: 'ink',
      text: words,
      font: sans(figurePx, 600),
      at: { x: x + inward * 14, y: y + 0.36 * figurePx },
      anchor: inward === 1 ? 'start' : 'end',
      turnRad: 0,
      haloPx: 3.4,
    };
    if (!labels.place([text])) continue;
    texts.push(text);
    ticks.push([at(x, y), at(x + inward * 9, y)]);
  }
  return [{ kind: 'stroke', layer: 'names', role: 'ink', lines: ticks, closed: false, widthPx: 0.9 }, ...texts];
}

const at = (x: number, y: number): Xy => ({ x, y });
