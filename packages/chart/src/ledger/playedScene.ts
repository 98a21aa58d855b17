import type { HoleGround, PlanePoint } from '@leeway/engine';
import { coverOf } from '../ground/cover.ts';
import { tintMarks } from '../ground/groundMarks.ts';
import { inOrder, type Mark, type Scene, type Xy } from '../marks.ts';
import { quadOf } from '../plane/quad.ts';
import { indexSheet, type Size } from '../sheet.ts';

/** Where the strokes of a hole were played from, putts among them, in order. */
export interface PlayedHole {
  readonly ground: HoleGround;
  readonly from: readonly PlanePoint[];
}

const BALL_PX = 2;
const TEE_PX = 2.6;
const FLAG_PX = 9;

/** A hole small, its flag straight up, with the strokes as they were played: a square at the tee, a ring wherever a ball came to rest. */
export function playedScene({ ground, from }: PlayedHole, size: Size): Scene {
  const sheet = indexSheet(ground, size);
  const at = [...from, ground.flag].map((p) => sheet.toPaper(p));
  const tee = at[0] ?? sheet.toPaper(ground.ball);
  const square = quadOf({ left: tee.x - TEE_PX, right: tee.x + TEE_PX, top: tee.y - TEE_PX, bottom: tee.y + TEE_PX });
  const flag = sheet.toPaper(ground.flag);
  const balls = at.slice(1, -1);
  const marks: Mark[] = [
    ...tintMarks(sheet, coverOf(ground, sheet)).flatMap(onPaper),
    { kind: 'stroke', layer: 'lines', role: 'ink', lines: [at], closed: false, widthPx: 1.1 },
    { kind: 'dots', layer: 'signs', role: 'sheet', at: balls, radiusPx: BALL_PX },
    { kind: 'dots', layer: 'signs', role: 'ink', at: balls, radiusPx: BALL_PX, lineWidthPx: 1 },
    { kind: 'fill', layer: 'signs', role: 'ink', rings: [square] },
    ...staff(flag),
  ];
  const strokes = from.length;
  return {
    ...size,
    placing: sheet.placing,
    title: ground.name ?? `Hole ${ground.hole}`,
    description: `Hole ${ground.hole}: ${strokes} ${strokes === 1 ? 'stroke' : 'strokes'} as they were played.`,
    marks: inOrder(marks),
  };
}

/** The page itself is the paper of so small a chart: no white beyond the ground and no line about it, and sand by its edge. */
function onPaper(mark: Mark): Mark[] {
  if (mark.kind === 'stroke') return mark.layer === 'bounds' ? [] : [mark];
  if (mark.kind !== 'fill') return [mark];
  if (mark.layer === 'sand') return [{ ...mark, role: 'sand' }];
  return [
    mark.role === 'sheet' && (mark.layer === 'tint' || mark.layer === 'bounds') ? { ...mark, role: 'paper' } : mark,
  ];
}

function staff(at: Xy): Mark[] {
  const top = { x: at.x, y: at.y - FLAG_PX };
  const pennant = [top, { x: at.x + 5, y: top.y + 2 }, { x: at.x, y: top.y + 4 }];
  return [
    { kind: 'stroke', layer: 'signs', role: 'ink', lines: [[at, top]], closed: false, widthPx: 1 },
    { kind: 'fill', layer: 'signs', role: 'ink', rings: [pennant] },
  ];
}
