import type { Labels } from '../labels.ts';
import type { Line, Mark, Text, Xy } from '../marks.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { widthPx } from '../text/measure.ts';
import { within } from './drawShot.ts';
import type { Arm, ShotMarks } from './shotMarks.ts';

const ARM = { fromPx: 17, linePx: 1.5, haloPx: 4.6, tickPx: 5.5, doublePx: 3.2 };
const FIGURE_PX = { sheet: 13, phone: 16 };

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
  const figurePx = FIGURE_PX[sheet.phone ? 'phone' : 'sheet'];
  const [bold, plain] = [sans(figurePx, 700), sans(figurePx, 500)];
  const rest = second === undefined || second === first ? '' : ` · ${second}`;
  const [boldPx, restPx] = [widthPx(first, bold), widthPx(rest, plain)];
  const width = boldPx + restPx;
  const { x, y } = towards(sheet, arm);
  const ends = (arm.ticksM.at(-1) ?? 0) * sheet.pxPerM;
  const height = 0.7 * figurePx;
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
