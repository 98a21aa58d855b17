import type { Labels } from '../labels.ts';
import type { Line, Text, Xy } from '../marks.ts';
import { apartPx, lengthPx, offLine, partOf, placeOn } from '../plane/line.ts';
import { InkMap } from '../plane/inkMap.ts';
import { type Quad, widened } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { boxOfText, widthPx } from '../text/measure.ts';
import type { Cover } from '../ground/cover.ts';
import type { Contour } from './contours.ts';

const FIGURE_PX = { sheet: 11.5, phone: 14 };
const GAP_PX = 3.5;
/** A figure keeps this far from a bank and from the bounds. */
const FROM_BANK_M = 7;
const FROM_BOUNDS_M = 9;
const STEP_PX = 7;
/** A line this long may carry two figures, this far apart. */
const LONG_PX = 520;
const APART_PX = 260;
/** Figures of two pieces of one line stand this far apart. */
const SAME_APART_PX = 110;
const STEEPEST_RAD = 1.15;
/** Clear room round a figure: to a line of the play or a ball, and to another contour. */
const CLEAR_PX = 5;
const CLEAR_OF_BALL_PX = 2.5;
const CLEAR_OF_LINE_PX = 1;
/** Nearer to the line of play than this is not better. */
const NEAR_PX = 30;

/** What a figure must not stand on, and where it is looked for first. */
export interface FigureRules {
  readonly sheet: Sheet;
  readonly cover: Cover;
  readonly labels: Labels;
  /** Places along the flag line, the line of flight and the arms; and the balls. */
  readonly lines: readonly Xy[];
  readonly balls: readonly Xy[];
  /** The line of play. */
  readonly play: readonly [Xy, Xy];
}

/** Contours cut open for their figures, and the figures. */
export function withFigures(contours: readonly Contour[], rules: FigureRules): { lines: Contour[]; figures: Text[] } {
  const { size } = rules.sheet;
  const [drawn, play, balls] = [new InkMap(size), new InkMap(size), new InkMap(size)];
  contours.forEach((c, i) => drawn.line(c.line, i + 1));
  for (const q of rules.lines) play.dot(q, 1);
  for (const q of rules.balls) balls.dot(q, 1);
  const figures: Text[] = [];
  const lines: Contour[] = [];
  for (const [i, contour] of contours.entries()) {
    if (contour.weight === 'hair') {
      lines.push(contour);
      continue;
    }
    const clear = (quad: Quad): boolean =>
      !drawn.inkOf(widened(quad, CLEAR_OF_LINE_PX), i + 1) &&
      !play.inkOf(widened(quad, CLEAR_PX), 0) &&
      !balls.inkOf(widened(quad, CLEAR_OF_BALL_PX), 0);
    const alike = figures.filter((f) => f.text === contour.strokes.toFixed(1)).map((f) => f.at);
    const cuts = figuresOf(contour, rules, clear, alike);
    figures.push(...cuts.map((c) => c.text));
    lines.push(...opened(contour, cuts));
  }
  return { lines, figures };
}

interface Cut {
  readonly text: Text;
  readonly from: number;
  readonly to: number;
  readonly at: Xy;
}

function figuresOf(contour: Contour, rules: FigureRules, clear: (quad: Quad) => boolean, alike: readonly Xy[]): Cut[] {
  const heavy = contour.weight === 'heavy';
  const figurePx = FIGURE_PX[rules.sheet.phone ? 'phone' : 'sheet'];
  const font = sans(figurePx, heavy ? 700 : 500);
  const figure = contour.strokes.toFixed(1);
  const gap = widthPx(figure, font) + 2 * GAP_PX;
  const whole = lengthPx(contour.line);
  if (whole < gap + 40) return [];
  const candidates: { readonly cut: Cut; readonly cost: number }[] = [];
  for (let from = 8; from + gap + 8 <= whole; from += STEP_PX) {
    const found = candidate(contour.line, from, gap, rules);
    if (!found) continue;
    const foot = 0.36 * figurePx;
    const text: Text = {
      kind: 'text',
      layer: 'contours',
      role: 'contour',
      text: figure,
      font,
      at: { x: found.at.x - Math.sin(found.turnRad) * foot, y: found.at.y + Math.cos(found.turnRad) * foot },
      anchor: 'middle',
      turnRad: found.turnRad,
      haloPx: 0,
    };
    candidates.push({ cut: { text, from, to: from + gap, at: found.at }, cost: found.cost });
  }
  const placed: Cut[] = [];
  const most = whole > LONG_PX ? 2 : 1;
  for (const { cut } of candidates.toSorted((a, b) => a.cost - b.cost)) {
    if (placed.length >= most) break;
    if (placed.some((p) => apartPx(p.at, cut.at) < APART_PX)) continue;
    if (alike.some((at) => apartPx(at, cut.at) < SAME_APART_PX)) continue;
    const quad = boxOfText(cut.text);
    if (!quad.every((q) => standsOn(q, rules)) || !clear(quad)) continue;
    if (rules.labels.place([cut.text])) placed.push(cut);
  }
  return placed;
}

/** A stretch of line as a place for a figure: its middle, its slope, and how far it is from level, straight and near the line of play. */
function candidate(line: Line, from: number, gap: number, rules: FigureRules) {
  const [a, b] = [placeOn(line, from), placeOn(line, from + gap)];
  const middle = placeOn(line, from + gap / 2);
  if (!a || !b || !middle) return undefined;
  const bend = 1 - apartPx(a, b) / gap;
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  const turnRad = Math.atan2(right.y - left.y, right.x - left.x);
  if (bend > 0.06 || Math.abs(turnRad) > STEEPEST_RAD || offLine(middle, a, b) > 2.6) return undefined;
  if (!standsOn(middle, rules)) return undefined;
  const aside = offLine(middle, rules.play[0], rules.play[1]);
  const at = { x: (a.x + b.x) / 2 / 2 + middle.x / 2, y: (a.y + b.y) / 2 / 2 + middle.y / 2 };
  return { at, turnRad, cost: 60 * Math.abs(turnRad) + 900 * bend + 0.35 * Math.max(NEAR_PX, aside) };
}

/** On grass, away from banks and bounds. */
const standsOn = (q: Xy, { cover }: FigureRules): boolean => {
  const surface = cover.surfaceAt(q);
  return (
    (surface === 'rough' || surface === 'fairway' || surface === 'green' || surface === 'tee') &&
    cover.toM(q, 'penalty') >= FROM_BANK_M &&
    cover.toM(q, 'out') >= FROM_BOUNDS_M
  );
};

function opened(contour: Contour, cuts: readonly Cut[]): Contour[] {
  const whole = lengthPx(contour.line);
  const sorted = cuts.toSorted((a, b) => a.from - b.from);
  const starts = [0, ...sorted.map((c) => c.to)];
  const ends = [...sorted.map((c) => c.from), whole];
  return starts
    .map((from, i) => ({
      ...contour,
      line: cuts.length === 0 ? contour.line : partOf(contour.line, from, ends[i] ?? whole),
    }))
    .filter((c) => c.line.length > 1);
}
