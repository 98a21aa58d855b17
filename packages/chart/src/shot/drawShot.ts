import type { PlanePoint } from '@leeway/engine';
import { between, distanceM, placeAt } from '@leeway/engine';
import type { Line, Mark, Xy } from '../marks.ts';
import { dashed, keepWhere } from '../plane/line.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import type { ShotMarks } from './shotMarks.ts';

/** Run of this many metres (5 yd) or more is drawn apart from the flight. */
const RUN_SHOWN_M = 4.572;

/** The flag line, dotted, from a ball to the flag. */
export const flagLine = (sheet: Sheet, from: PlanePoint, flag: PlanePoint): Mark => ({
  kind: 'stroke',
  layer: 'flagline',
  role: 'ink',
  lines: within(sheet, [sheet.toPaper(from), sheet.toPaper(flag)]).flatMap((l) => dashed(l, [0.01, 4])),
  closed: false,
  widthPx: 1.1,
});

/** The line of flight, solid to the landing; where the run is long, a bar across at the landing and a broken line on to the spot. */
export function flight(sheet: Sheet, shot: ShotMarks): Mark[] {
  const { at } = shot.choice.from;
  const { spot, priced } = shot.choice.answer;
  const stroke = { kind: 'stroke', layer: 'lines', role: 'ink', closed: false } as const;
  const runs = distanceM(priced.lands, spot) >= RUN_SHOWN_M;
  const [ball, lands, end] = [at, priced.lands, spot].map((p) => sheet.toPaper(p));
  if (!ball || !lands || !end) return [];
  const solid = within(sheet, [ball, runs ? lands : end]);
  if (!runs) return [{ ...stroke, lines: solid, widthPx: 1.25 }];
  const step = Math.hypot(end.x - lands.x, end.y - lands.y) || 1;
  const [ux, uy] = [(end.x - lands.x) / step, (end.y - lands.y) / step];
  const bar = [-6, 6].map((d) => ({ x: lands.x - uy * d, y: lands.y + ux * d }));
  return [
    { ...stroke, lines: [...solid, ...within(sheet, [lands, end]).flatMap((l) => dashed(l, [4, 3.4]))], widthPx: 1.25 },
    { kind: 'stroke', layer: 'arms', role: 'ink', closed: false, lines: [bar], widthPx: 2.6 },
  ];
}

/** The pattern, ball by ball: good strikes as dots, mishits as open rings. */
export function pattern(sheet: Sheet, shot: ShotMarks): Mark[] {
  const shown = (balls: readonly PlanePoint[], radius: number): Xy[] =>
    balls
      .map((p) => sheet.toPaper(p))
      .filter((q) => [-radius, radius].every((d) => inRect({ x: q.x + d, y: q.y + d }, sheet.inner)));
  const rings = shown(shot.mishits, 2.5);
  return [
    { kind: 'dots', layer: 'pattern', role: 'ink', at: shown(shot.good, 1.35), radiusPx: 1.35 },
    { kind: 'dots', layer: 'pattern', role: 'sheet', at: rings, radiusPx: 2 },
    { kind: 'dots', layer: 'pattern', role: 'ink', at: rings, radiusPx: 2, lineWidthPx: 0.9 },
  ];
}

/** Lines, of which only what is on the sheet. */
export const within = (sheet: Sheet, ...lines: Line[]): Line[] =>
  lines.flatMap((line) => keepWhere(line, (q) => inRect(q, sheet.inner)));

/** Where a shot's line passes, in steps of about a metre, for keeping labels off it. */
export function alongShot(shot: ShotMarks): PlanePoint[] {
  const from = shot.choice.from.at;
  const { spot } = shot.choice.answer;
  const steps = Math.ceil(distanceM(from, spot));
  const line = Array.from({ length: steps + 1 }, (_, i) => between(from, spot, i / Math.max(1, steps)));
  const stems = shot.arms.flatMap((arm) => {
    const length = arm.ticksM.at(-1) ?? 0;
    return Array.from({ length: Math.ceil(length) + 1 }, (_, i) => placeAt(spot, arm.bearingRad, Math.min(length, i)));
  });
  return [...line, ...stems];
}
