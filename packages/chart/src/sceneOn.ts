import type { BallState, HoleGround, PlanePoint } from '@leeway/engine';
import { between } from '@leeway/engine';
import type { Charted } from './charted.ts';
import { bankLines } from './contour/bankLines.ts';
import type { Contour } from './contour/contours.ts';
import { contoursOn, contourStrokes } from './contour/drawContours.ts';
import { withFigures } from './contour/figures.ts';
import { describe, titleOf } from './describe.ts';
import { frame, marginFigures } from './frame/margin.ts';
import { type Room, roomHides } from './frame/room.ts';
import { rose, ROSE_PX, roseWanted } from './frame/rose.ts';
import { titleBlock, titleSize } from './frame/title.ts';
import { areaNames } from './ground/names.ts';
import type { HeldSheet } from './heldSheet.ts';
import { Labels } from './labels.ts';
import type { Mark, Scene, Xy } from './marks.ts';
import { grown, inRect } from './plane/quad.ts';
import type { Sheet } from './sheet.ts';
import { alternativeMarks } from './shot/alternatives.ts';
import { arms } from './shot/arms.ts';
import { alongShot, flagLine, flight, pattern } from './shot/drawShot.ts';
import { holdingLines } from './shot/holding.ts';
import { nameTexts, signMarks } from './shot/placeSigns.ts';
import type { ShotMarks } from './shot/shotMarks.ts';

/** All marks of a sheet that lie over its ground, and the sheet told in words. Labels are placed in order of need: what is placed first has its room. */
export function sceneOn(
  held: HeldSheet,
  charted: Charted,
  shots: readonly ShotMarks[],
  shown: ShotMarks | undefined,
): { readonly marks: Mark[]; readonly rose: Scene['rose']; readonly words: ReturnType<typeof describe> } {
  const { ground, shot } = charted;
  const { sheet, cover } = held;
  const title = titleOf(charted, sheet.units);
  const play = playOf(sheet, ground, shown);
  const room = held.roomFor(play, {
    title: sheet.phone ? undefined : titleSize(title, sheet),
    rose: roseWanted(sheet, charted.wind),
  });
  const labels = labelsRound(sheet, room);
  const signs = signMarks(sheet, charted, shots, shown, labels);
  const shotLines = shown ? [...pattern(sheet, shown), ...arms(sheet, shown, labels)] : [];
  const others = shown && charted.alternatives === true ? alternativeMarks(sheet, shown, labels) : [];
  const lie = (charted.chooseFrom ?? shown?.choice.from)?.lie ?? 'tee';
  const names = nameTexts(sheet, ground, lie, labels);
  const margin = marginFigures(sheet, ground.flag, lie === 'tee' ? 'tee' : 'ball', labels);
  const grounds = areaNames(sheet, cover, labels);
  const { contours, banks } = strokesOn(held, charted, room, shown);
  const figured = withFigures(contours, {
    sheet,
    cover,
    labels,
    ...play,
    play: [sheet.toPaper(sheet.ball), sheet.toPaper(shown?.choice.answer.spot ?? ground.flag)],
  });
  const flown = shot === undefined ? shots : shots.slice(shot, shot + 1);
  const marks: Mark[] = [
    ...contourStrokes(figured.lines),
    ...banks,
    ...figured.figures,
    flagLine(sheet, sheet.ball, ground.flag),
    ...flown.flatMap((s) => flight(sheet, s)),
    ...(shown && charted.holding === true ? holdingLines(sheet, shown) : []),
    ...shotLines,
    ...others,
    ...signs,
    ...grounds,
    ...margin,
    ...names,
    ...frame(sheet),
    ...rose(sheet, room.rose, charted.wind, charted.arrowOver),
    ...(room.title ? titleBlock(title, sheet, room.title) : []),
  ];
  const { at, radiusPx } = room.rose;
  return { marks, rose: { at, scale: radiusPx / ROSE_PX }, words: describe(charted, contours, sheet.units) };
}

function labelsRound(sheet: Sheet, { title, rose: { at, radiusPx, words } }: Room): Labels {
  const labels = new Labels(sheet.inner);
  if (title) labels.takeRect(title);
  labels.takeRect(grown({ left: at.x, right: at.x, top: at.y, bottom: at.y }, radiusPx));
  if (words) labels.takeRect(words);
  return labels;
}

/** The contours, and the lines along banks; none where the strokes are not known. */
function strokesOn(
  { sheet, cover, grid }: HeldSheet,
  { ground, strokesAtRest }: Charted,
  room: Room,
  shown: ShotMarks | undefined,
): { readonly contours: Contour[]; readonly banks: Mark[] } {
  if (strokesAtRest === undefined) return { contours: [], banks: [] };
  const from: BallState = shown?.choice.from ?? { at: ground.ball, lie: 'tee' };
  const hides = (q: Xy): boolean => roomHides(room, q);
  return {
    contours: contoursOn({ sheet, cover, grid }, hides, strokesAtRest, from),
    banks: bankLines(sheet, cover, hides, strokesAtRest, from),
  };
}

/** Places of the play on paper: along the flag line, the line of flight and the arms, and where the balls lie. */
function playOf(sheet: Sheet, ground: HoleGround, shot: ShotMarks | undefined): { lines: Xy[]; balls: Xy[] } {
  const onPaper = (places: readonly PlanePoint[]): Xy[] =>
    places.map((p) => sheet.toPaper(p)).filter((q) => inRect(q, sheet.inner));
  const line = Array.from({ length: 201 }, (_, i) => between(sheet.ball, ground.flag, i / 200));
  return {
    lines: onPaper([...line, ...(shot ? alongShot(shot) : [])]),
    balls: onPaper(shot ? [...shot.good, ...shot.mishits] : []),
  };
}
