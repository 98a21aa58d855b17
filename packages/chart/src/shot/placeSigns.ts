import type { HoleGround, Lie } from '@leeway/engine';
import type { Charted } from '../charted.ts';
import type { Labels } from '../labels.ts';
import type { Mark, Text, Xy } from '../marks.ts';
import { grown, inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { serif } from '../text/fonts.ts';
import type { ShotMarks } from './shotMarks.ts';
import { ballSign, flagSign, spotSign, triangle } from './signs.ts';

/** Spots, flag and ball with the room they take. Spots of later shots are small and on a hole sheet only. */
export function signMarks(
  sheet: Sheet,
  { ground, ownSpot }: Charted,
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
  const own = ownSpot && sheet.toPaper(ownSpot);
  if (own && on(own)) {
    take(own, 13);
    marks.push(...spotSign(own, 0.85, 'ink'));
  }
  if (on(flag)) {
    labels.takeRect({ left: flag.x - 4, right: flag.x + 16, top: flag.y - 28, bottom: flag.y + 4 });
    marks.push(...flagSign(flag));
  }
  if (!inRect(ball, grown(sheet.inner, -8))) return marks;
  take(ball, 8);
  return [...marks, ...ballSign(ball)];
}

/** "flag", "tee" and "ball, fairway" beside their signs. */
export function nameTexts(sheet: Sheet, ground: HoleGround, lie: Lie, labels: Labels): Text[] {
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
