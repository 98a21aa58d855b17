import type { BallState, HoleGround, PlanePoint } from '@leeway/engine';
import { between } from '@leeway/engine';
import { contoursOf, type Contour } from './contour/contours.ts';
import { rasterOf } from './contour/field.ts';
import { withFigures } from './contour/figures.ts';
import type { Charted } from './charted.ts';
import { describe, titleOf } from './describe.ts';
import { frame, marginFigures } from './frame/margin.ts';
import { findRoom } from './frame/room.ts';
import { rose, ROSE_PX } from './frame/rose.ts';
import { titleBlock, titleSize } from './frame/title.ts';
import { groundMarks } from './ground/groundMarks.ts';
import { areaNames } from './ground/names.ts';
import { type Painted, paintedOn } from './ground/painted.ts';
import { Labels } from './labels.ts';
import { LAYERS, type Mark, type Scene, type Stroke, type Text, type Xy } from './marks.ts';
import { grown, inRect, quadOf } from './plane/quad.ts';
import { holeSheet, type Sheet, shotSheet, type Size, type Units } from './sheet.ts';
import { alongShot, arms, flagLine, flight, pattern } from './shot/drawShot.ts';
import { type ShotMarks, shotMarks } from './shot/shotMarks.ts';
import { ballSign, flagSign, spotSign, triangle } from './shot/signs.ts';
import { serif } from './text/fonts.ts';

/** Lines end this far from the bounds. */
const CLEAR_OF_BOUNDS_M = 3.4;
/**
 * A line is broken where the strokes on it are farther than this from its figure: along the edge of a lie, where they jump. The edge itself is drawn
 * there.
 */
const FARTHEST_OFF = 0.03;
/** Lines each 0.05 are drawn above this scale only, px a yard. */
const HAIRS_FROM_PX = 4;

/**
 * A hole, or one shot of it, as a sheet: plain marks in px of paper, in the order they are drawn. Pure: the same input gives the same marks.
 * The chosen shot lies straight up. Throws a RangeError when `shot` is not one of the choices.
 */
export function scene(charted: Charted, size: Size, units: Units): Scene {
  const { ground, choices } = charted;
  const shots = choices.map(shotMarks);
  const shown = charted.shot === undefined ? shots[0] : shots[charted.shot];
  if (charted.shot !== undefined && shown === undefined) throw new RangeError(`no shot ${charted.shot} in this plan`);
  const sheet =
    charted.shot === undefined || !shown ? holeSheet(ground, size, units) : shotSheet(ground, shown, size, units);
  const painted = paintedOn(ground, sheet);
  const title = titleOf(charted, units);
  const play = playOf(sheet, ground, shown);
  const room = findRoom(sheet, painted, play, titleSize(title, sheet));

  const labels = new Labels(sheet.inner);
  labels.takeRect(room.title);
  labels.takeRect(grown({ left: room.rose.x, right: room.rose.x, top: room.rose.y, bottom: room.rose.y }, ROSE_PX));
  const signs = signMarks(sheet, ground, shots, shown, labels);
  const shotLines = shown ? [...pattern(sheet, shown), ...arms(sheet, shown, labels)] : [];
  const words = nameTexts(sheet, ground, shown, labels);
  const margin = marginFigures(sheet, ground.flag, shown && shown.choice.from.lie !== 'tee' ? 'ball' : 'tee', labels);
  const names = areaNames(sheet, painted, labels);

  const hides = (q: Xy): boolean => inRect(q, room.title) || Math.hypot(q.x - room.rose.x, q.y - room.rose.y) < ROSE_PX;
  const contours =
    charted.strokesAtRest === undefined
      ? []
      : contoursOn(sheet, painted, hides, charted.strokesAtRest, shown?.choice.from ?? teeOf(ground));
  const figured = withFigures(contours, {
    sheet,
    painted,
    labels,
    avoid: play,
    play: [sheet.toPaper(sheet.ball), sheet.toPaper(shown?.choice.answer.spot ?? ground.flag)],
  });

  const marks: Mark[] = [
    {
      kind: 'fill',
      layer: 'tint',
      role: 'sheet',
      rings: [quadOf({ left: 0, top: 0, right: size.widthPx, bottom: size.heightPx })],
    },
    ...groundMarks(sheet, painted),
    ...contourStrokes(figured.lines),
    ...figured.figures,
    flagLine(sheet, sheet.ball, ground.flag),
    ...(charted.shot === undefined ? shots : shots.slice(charted.shot, charted.shot + 1)).flatMap((s) =>
      flight(sheet, s),
    ),
    ...shotLines,
    ...signs,
    ...names,
    ...margin,
    ...words,
    ...frame(sheet),
    ...rose(room.rose, -sheet.upRad),
    ...titleBlock(title, sheet, room.title),
  ];
  const placing = { origin: sheet.toPaper({ eastM: 0, northM: 0 }), pxPerM: sheet.pxPerM, upRad: sheet.upRad };
  return { ...size, placing, ...describe(charted, contours, units), marks: inOrder(marks) };
}

const teeOf = (ground: HoleGround): BallState => ({ at: ground.ball, lie: 'tee' });

const inOrder = (marks: readonly Mark[]): Mark[] =>
  marks.toSorted((a, b) => LAYERS.indexOf(a.layer) - LAYERS.indexOf(b.layer));

function contoursOn(
  sheet: Sheet,
  painted: Painted,
  hides: (q: Xy) => boolean,
  strokesAtRest: (p: PlanePoint, from: BallState) => number,
  from: BallState,
): Contour[] {
  const isDrawn = (p: PlanePoint): boolean => {
    const surface = painted.surfaceAt(p);
    return surface !== 'penalty' && surface !== 'out' && surface !== 'bunker' && surface !== 'unmapped';
  };
  const keep = (q: Xy, strokes: number): boolean => {
    if (!inRect(q, sheet.inner) || hides(q)) return false;
    const p = sheet.toPlane(q);
    return (
      isDrawn(p) &&
      Math.abs(strokesAtRest(p, from) - strokes) <= FARTHEST_OFF &&
      painted.toEdgeM(p, 'out') >= CLEAR_OF_BOUNDS_M
    );
  };
  const lieAt = (p: PlanePoint): string | undefined => (isDrawn(p) ? painted.surfaceAt(p) : undefined);
  const raster = rasterOf(sheet, (p) => strokesAtRest(p, from), lieAt);
  return contoursOf(raster, keep, sheet.pxPerM * 0.9144 > HAIRS_FROM_PX);
}

const CONTOUR_PX: { readonly [W in Contour['weight']]: readonly [widthPx: number, opacity: number] } = {
  hair: [0.55, 0.62],
  plain: [0.95, 1],
  heavy: [1.9, 1],
};

/** One mark a level, lightest first. */
function contourStrokes(lines: readonly Contour[]): Stroke[] {
  const levels = Map.groupBy(lines, (c) => c.strokes);
  const found = [...levels].map(([strokes, pieces]): Stroke => {
    const [widthPx, opacity] = CONTOUR_PX[pieces[0]?.weight ?? 'plain'];
    const drawn = pieces.map((c) => c.line);
    return {
      kind: 'stroke',
      layer: 'contours',
      role: 'contour',
      lines: drawn,
      closed: false,
      widthPx,
      opacity,
      strokes,
    };
  });
  return found.toSorted((a, b) => a.widthPx - b.widthPx);
}

/** Places of the play on paper: flag line, line of flight, arms, balls. Blocks and figures keep off them. */
function playOf(sheet: Sheet, ground: HoleGround, shot: ShotMarks | undefined): Xy[] {
  const line = Array.from({ length: 201 }, (_, i) => between(sheet.ball, ground.flag, i / 200));
  const of = shot ? [...alongShot(shot), ...shot.good, ...shot.mishits] : [];
  return [...line, ...of].map((p) => sheet.toPaper(p)).filter((q) => inRect(q, sheet.inner));
}

function signMarks(
  sheet: Sheet,
  ground: HoleGround,
  shots: readonly ShotMarks[],
  shown: ShotMarks | undefined,
  labels: Labels,
): Mark[] {
  const on = (q: Xy): boolean => inRect(q, { ...grown(sheet.inner, -8), top: sheet.inner.top + 28 });
  const marks: Mark[] = [];
  const take = (q: Xy, rim: number): void =>
    labels.takeRect(grown({ left: q.x, right: q.x, top: q.y, bottom: q.y }, rim));
  const ball = sheet.toPaper(sheet.ball);
  const flag = sheet.toPaper(ground.flag);
  if (sheet.kind === 'hole') {
    for (const later of shots.slice(1)) {
      const spot = sheet.toPaper(later.choice.answer.spot);
      if (on(spot)) marks.push(...spotSign(spot, 0.6));
    }
  }
  if (shown) {
    const spot = sheet.toPaper(shown.choice.answer.spot);
    const [top, right, left] = triangle(spot, 30);
    if (top && right && left) labels.takeRect({ left: left.x, right: right.x, top: top.y, bottom: right.y });
    marks.push(...spotSign(spot));
  }
  if (on(flag)) {
    labels.takeRect({ left: flag.x - 4, right: flag.x + 16, top: flag.y - 28, bottom: flag.y + 4 });
    marks.push(...flagSign(flag));
  }
  take(ball, 8);
  return [...marks, ...ballSign(ball)];
}

/** "flag", "tee" and "ball, fairway" beside their signs. */
function nameTexts(sheet: Sheet, ground: HoleGround, shown: ShotMarks | undefined, labels: Labels): Text[] {
  const lie = shown?.choice.from.lie ?? 'tee';
  const name = (text: string, at: Xy, dx: number, dy: number): Text => ({
    kind: 'text',
    layer: 'names',
    role: 'ink',
    text,
    font: serif(14),
    at: { x: at.x + dx, y: at.y + dy },
    anchor: dx > 0 ? 'start' : 'end',
    turnRad: 0,
    haloPx: 4,
  });
  const ball = sheet.toPaper(sheet.ball);
  const flag = sheet.toPaper(ground.flag);
  const ballName = lie === 'tee' ? 'tee' : `ball, ${lie === 'recovery' ? 'trees' : lie === 'bunker' ? 'sand' : lie}`;
  const beside = (text: string, at: Xy, offsets: readonly (readonly [number, number])[]): readonly Text[] =>
    labels.first(offsets.map(([dx, dy]) => [name(text, at, dx, dy)])) ?? [];
  return [
    ...beside('flag', flag, [
      [22, -17],
      [8, 3],
      [-8, -17],
      [-8, 3],
      [22, -32],
      [-8, -34],
    ]),
    ...beside(ballName, ball, [
      [14, 5],
      [-14, 5],
      [14, 20],
      [-14, 20],
    ]),
  ];
}
