import type { Line, Mark, Text, Xy } from '../marks.ts';
import { sans } from '../text/fonts.ts';
import { boxOfText } from '../text/measure.ts';
import { quadsMeet } from '../plane/quad.ts';
import type { CarryScale } from './carryScale.ts';
import { type Row, type Rung, shortName } from './ladder.ts';

const BOX_PX = 14;
const MEAN_PX = 20;
const DOT_PX = 1.1;
const RING_PX = 2.2;
const FIGURE_PX = 13;
const CLAIM_PX = 6;
/** Balls stand up to this far above and below their row's middle, by turns that never fall into lines. */
const SCATTER_PX = 8;
const GOLDEN = 0.618034;

const stroke = (lines: readonly Line[], widthPx: number, closed = false): Mark => ({
  kind: 'stroke',
  layer: 'signs',
  role: 'ink',
  lines,
  closed,
  widthPx,
});

const words = (text: string, at: Xy, sizePx: number, weight: 400 | 600, role: 'ink' | 'ink-2'): Text => ({
  kind: 'text',
  layer: 'names',
  role,
  text,
  font: sans(sizePx, weight),
  at,
  anchor: 'middle',
  turnRad: 0,
  haloPx: 2.6,
});

/** A row's marks about the height of its middle: balls, boxes with their figures, claims. A figure that would meet another goes below its box. */
export function rowMarks({ rungs }: Row, y: number, scale: CarryScale): readonly Mark[] {
  const marks: Mark[] = [];
  const set: Text[] = [];
  const free = (text: Text): boolean => set.every((other) => !quadsMeet(boxOfText(text), boxOfText(other)));
  for (const rung of rungs) {
    marks.push(...ballMarks(rung, y, scale), ...boxMarks(rung, y, scale));
    const x = scale.x(rung.carryM);
    const whole = (rung.carryM / scale.unitM).toFixed(0);
    const above = words(whole, { x, y: y - MEAN_PX / 2 - 4 }, FIGURE_PX, 600, 'ink');
    const name = shortName(rung);
    const below = words(name === '' ? whole : name, { x, y: y + MEAN_PX / 2 + 11 }, 12, 400, 'ink');
    if (free(above)) {
      set.push(above);
      if (name !== '' && free(below)) set.push(below);
      continue;
    }
    const both = words(`${whole} ${name}`.trim(), { x, y: y + MEAN_PX / 2 + 11 }, FIGURE_PX, 600, 'ink');
    if (free(both)) set.push(both);
  }
  return [...marks, ...set];
}

function ballMarks({ balls }: Rung, y: number, scale: CarryScale): readonly Mark[] {
  const left = scale.x(scale.from * scale.unitM);
  const good: Xy[] = [];
  const missed: Xy[] = [];
  balls.forEach((ball, i) => {
    const x = scale.x(ball.carryM);
    if (x < left + RING_PX) return;
    const turn = ((i + 1) * GOLDEN) % 1;
    (ball.mishit ? missed : good).push({ x, y: y + SCATTER_PX * (2 * turn - 1) });
  });
  const dots = { kind: 'dots', layer: 'pattern', role: 'ink' } as const;
  return [
    { ...dots, at: good, radiusPx: DOT_PX },
    { ...dots, at: missed, radiusPx: RING_PX, lineWidthPx: 0.8 },
  ];
}

function boxMarks({ carryM, lo80M, hi80M, claimedM }: Rung, y: number, scale: CarryScale): readonly Mark[] {
  const [left, right, x] = [scale.x(lo80M), scale.x(hi80M), scale.x(carryM)];
  const half = BOX_PX / 2;
  const box = [
    { x: left, y: y - half },
    { x: right, y: y - half },
    { x: right, y: y + half },
    { x: left, y: y + half },
  ];
  const mean = [
    { x, y: y - MEAN_PX / 2 },
    { x, y: y + MEAN_PX / 2 },
  ];
  return [
    stroke([box], 1.3, true),
    stroke([mean], 3),
    ...(claimedM === undefined ? [] : claimMarks(scale.x(claimedM), y)),
  ];
}

/** An open diamond. */
export function claimMarks(x: number, y: number): readonly Mark[] {
  const diamond = [
    { x, y: y - CLAIM_PX },
    { x: x + CLAIM_PX, y },
    { x, y: y + CLAIM_PX },
    { x: x - CLAIM_PX, y },
  ];
  return [{ kind: 'fill', layer: 'signs', role: 'paper', rings: [diamond] }, stroke([diamond], 1.3, true)];
}
