import type { PlanePoint } from '@leeway/engine';
import { between, distanceM, placeAt } from '@leeway/engine';
import type { Labels } from '../labels.ts';
import type { Line, Mark, Text, Xy } from '../marks.ts';
import { dashed, keepWhere } from '../plane/line.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { widthPx } from '../text/measure.ts';
import type { Arm, ShotMarks } from './shotMarks.ts';

const ARM = { fromPx: 17, linePx: 1.5, haloPx: 4.6, tickPx: 5.5, doublePx: 3.2, figurePx: 13 };
/** Run of this many metres (5 yd) or more is drawn apart from the flight. */
const RUN_SHOWN_M = 4.572;

/** The flag line, dotted, from a ball to the flag. */
export const flagLine = (sheet: Sheet, from: PlanePoint, flag: PlanePoint): Mark => ({
  kind: 'stroke',
  layer: 'lines',
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

/** The arms of room with their ticks, and their figures where they find room. */
export function arms(sheet: Sheet, shot: ShotMarks, labels: Labels): Mark[] {
  const spot = sheet.toPaper(shot.choice.answer.spot);
  const lines: Line[] = [];
  const figures: Text[] = [];
  for (const arm of shot.arms) {
    lines.push(...within(sheet, ...armLines(sheet, shot, arm)));
    figures.push(...(labels.first(figureCandidates(sheet, spot, arm)) ?? []));
  }
  const stroke = { kind: 'stroke', layer: 'arms', closed: false, lines } as const;
  return [
    { ...stroke, role: 'sheet', widthPx: ARM.haloPx, opacity: 0.75 },
    { ...stroke, role: 'buoy', widthPx: ARM.linePx },
    ...figures,
  ];
}

function armLines(sheet: Sheet, shot: ShotMarks, arm: Arm): Line[] {
  const spot = sheet.toPaper(shot.choice.answer.spot);
  const { x, y } = towards(sheet, arm);
  const at = (px: number, side: number): Xy => ({ x: spot.x + x * px - y * side, y: spot.y + y * px + x * side });
  const tick = (px: number): Line => [at(px, -ARM.tickPx), at(px, ARM.tickPx)];
  const [near = 0, far] = arm.ticksM.map((m) => m * sheet.pxPerM);
  const end = far ?? near;
  const stem = end > ARM.fromPx ? [[at(ARM.fromPx, 0), at(end, 0)]] : [];
  const second = far === undefined ? [] : [tick(far), tick(far - ARM.doublePx)];
  return [...stem, tick(near), ...second];
}

/** The direction of an arm on paper. */
const towards = (sheet: Sheet, arm: Arm): Xy => {
  const turn = arm.bearingRad - sheet.upRad;
  return { x: Math.sin(turn), y: -Math.cos(turn) };
};

/** `16 · 19` at the end of an arm, else beside it, else nearer in. */
function* figureCandidates(sheet: Sheet, spot: Xy, arm: Arm): Generator<Text[]> {
  const [first, second] = arm.ticksM.map((m) => String(Math.round(m / sheet.unitM)));
  if (first === undefined) return;
  const [bold, plain] = [sans(ARM.figurePx, 700), sans(ARM.figurePx, 500)];
  const rest = second === undefined || second === first ? '' : ` · ${second}`;
  const [boldPx, restPx] = [widthPx(first, bold), widthPx(rest, plain)];
  const width = boldPx + restPx;
  const { x, y } = towards(sheet, arm);
  const ends = (arm.ticksM.at(-1) ?? 0) * sheet.pxPerM;
  const height = 0.7 * ARM.figurePx;
  const texts = (middle: Xy): Text[] => {
    const base = { kind: 'text', layer: 'arms', role: 'buoy', anchor: 'start', turnRad: 0, haloPx: 3.4 } as const;
    const left = middle.x - width / 2;
    const foot = middle.y + height / 2;
    const found: Text[] = [{ ...base, text: first, font: bold, at: { x: left, y: foot } }];
    if (rest !== '') {
      const dot = widthPx(' ', plain);
      found.push({ ...base, text: rest.trimStart(), font: plain, at: { x: left + boldPx + dot, y: foot } });
    }
    return found;
  };
  for (const beyond of [5, 12, 20]) {
    const out = ends + beyond + Math.abs(x) * (width / 2) + Math.abs(y) * (height / 2);
    yield texts({ x: spot.x + x * out, y: spot.y + y * out });
  }
  for (const back of [0, 14, 28, 42, 60, 90]) {
    for (const side of [-1, 1]) {
      const aside = side * (12 + Math.abs(y) * (width / 2) + Math.abs(x) * (height / 2));
      const out = Math.max(ARM.fromPx + 8, ends - back);
      yield texts({ x: spot.x + x * out - y * aside, y: spot.y + y * out + x * aside });
    }
  }
}

/** Lines, of which only what is on the sheet. */
const within = (sheet: Sheet, ...lines: Line[]): Line[] =>
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
