import type { BallState, HoleGround } from '@leeway/engine';
import { between } from '@leeway/engine';
import { contoursOn, contourStrokes } from './contour/drawContours.ts';
import { withFigures } from './contour/figures.ts';
import type { Charted } from './charted.ts';
import { describe, titleOf } from './describe.ts';
import { frame, marginFigures } from './frame/margin.ts';
import { findRoom } from './frame/room.ts';
import { rose, ROSE_PX } from './frame/rose.ts';
import { titleBlock, titleSize } from './frame/title.ts';
import { groundMarks } from './ground/groundMarks.ts';
import { areaNames } from './ground/names.ts';
import { paintedOn } from './ground/painted.ts';
import { Labels } from './labels.ts';
import { LAYERS, type Mark, type Scene, type Xy } from './marks.ts';
import { grown, inRect, quadOf } from './plane/quad.ts';
import { holeSheet, type Sheet, shotSheet, type Size, type Units } from './sheet.ts';
import { alongShot, arms, flagLine, flight, pattern } from './shot/drawShot.ts';
import { type ShotMarks, shotMarks } from './shot/shotMarks.ts';
import { nameTexts, signMarks } from './shot/placeSigns.ts';

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

/** Places of the play on paper: flag line, line of flight, arms, balls. Blocks and figures keep off them. */
function playOf(sheet: Sheet, ground: HoleGround, shot: ShotMarks | undefined): Xy[] {
  const line = Array.from({ length: 201 }, (_, i) => between(sheet.ball, ground.flag, i / 200));
  const of = shot ? [...alongShot(shot), ...shot.good, ...shot.mishits] : [];
  return [...line, ...of].map((p) => sheet.toPaper(p)).filter((q) => inRect(q, sheet.inner));
}
