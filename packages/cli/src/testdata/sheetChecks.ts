import { boxOfText, groundAt, type Mark, quadsMeet, type Scene, scene, type Text } from '@leeway/chart';
import { readPlayer } from '@leeway/contract';
import { type BallState, type HolePlan, type HoleSolution, planHole, playerModel, randomFrom, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';

const SIZE = { widthPx: 690, heightPx: 768 };

/** A planned hole with its sheets: the whole hole first, then each shot. */
export interface Drawn {
  readonly solution: HoleSolution;
  readonly plan: HolePlan;
  readonly sheets: readonly { readonly scene: Scene; readonly from: BallState }[];
}

/** Plans a hole of two files and draws all its sheets. */
export function drawAll(files: { readonly ground: string; readonly player: string }, hole: string): Drawn {
  const player = readPlayer(readFileSync(files.player, 'utf8'), files.player).value;
  const course = readGround(readFileSync(files.ground, 'utf8'), files.ground, { hole }).value;
  const ground = course?.holes.find((h) => h.hole === hole);
  if (!player || !ground) throw new Error(`no hole ${hole} or no player in ${files.ground}, ${files.player}`);
  const model = playerModel(player);
  const solution = solveHole(ground, model);
  const plan = planHole(solution, model);
  const choices = plan.shots.map((s) => s.choice);
  const charted = { ground, choices, strokesAtRest: solution.strokesAtRest.bind(solution) };
  const tee: BallState = { at: ground.ball, lie: 'tee' };
  return {
    solution,
    plan,
    sheets: [
      { scene: scene(charted, SIZE, 'yd'), from: tee },
      ...choices.map((choice, shot) => ({ scene: scene({ ...charted, shot }, SIZE, 'yd'), from: choice.from })),
    ],
  };
}

const isText = (mark: Mark): mark is Text => mark.kind === 'text';
const textsOf = (drawn: Scene): Text[] => drawn.marks.filter(isText);

/** Pairs of texts whose boxes overlap. */
export function overlaps(drawn: Scene): string[] {
  const boxes = textsOf(drawn).map((t) => ({ text: t.text, quad: boxOfText(t) }));
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => (quadsMeet(a.quad, b.quad) ? [`${a.text} on ${b.text}`] : [])),
  );
}

/** Texts that reach out of the inside of the frame. */
export const cutOff = (drawn: Scene): string[] =>
  textsOf(drawn).flatMap((t) =>
    boxOfText(t).every((p) => p.x >= 13 && p.y >= 13 && p.x <= drawn.widthPx - 13 && p.y <= drawn.heightPx - 13)
      ? []
      : [t.text],
  );

/** How far the strokes at rest are from a contour's own, at `count` of a sheet's contour places drawn with a seed; in rising order. */
export function contourErrors({ solution }: Drawn, { scene: drawn, from }: Drawn['sheets'][number], count: number): number[] {
  const places = drawn.marks.flatMap((m) => {
    const strokes = m.kind === 'stroke' ? m.strokes : undefined;
    if (m.kind !== 'stroke' || strokes === undefined) return [];
    return m.lines.flat().map((at) => ({ at, strokes }));
  });
  const random = randomFrom(count);
  return Array.from({ length: places.length === 0 ? 0 : count }, () => places[random.below(places.length)])
    .flatMap((p) => (p ? [Math.abs(solution.strokesAtRest(groundAt(drawn.placing, p.at), from) - p.strokes)] : []))
    .toSorted((a, b) => a - b);
}
