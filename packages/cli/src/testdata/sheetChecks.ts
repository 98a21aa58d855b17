import { boxOfText, groundAt, type Mark, quadsMeet, type Scene, scene, type Text } from '@leeway/chart';
import { readPlayer } from '@leeway/contract';
import {
  type BallState,
  type HolePlan,
  type HoleSolution,
  planHole,
  type PlanePoint,
  playerModel,
  randomFrom,
  solveHole,
} from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';

/** The sheet of a page and of a file in yards, and a phone's in metres. */
export const FORMATS = {
  page: { size: { widthPx: 690, heightPx: 768 }, phone: false, units: 'yd' },
  phone: { size: { widthPx: 366, heightPx: 380 }, phone: true, units: 'm' },
} as const;
export type Format = keyof typeof FORMATS;

/** A wind, so that the rose has its words. */
const WIND = { speedMps: 5.4, fromDeg: 250, known: 'measured' } as const;

/** A planned hole with its sheets: the whole hole first, then each shot. */
export interface Drawn {
  readonly solution: HoleSolution;
  readonly plan: HolePlan;
  readonly sheets: readonly { readonly scene: Scene; readonly from: BallState }[];
}

/** Plans a hole of two files and draws all its sheets. */
export function drawAll(
  files: { readonly ground: string; readonly player: string },
  hole: string,
  format: Format = 'page',
): Drawn {
  const player = readPlayer(readFileSync(files.player, 'utf8'), files.player).value;
  const course = readGround(readFileSync(files.ground, 'utf8'), files.ground, { hole }).value;
  const ground = course?.holes.find((h) => h.hole === hole);
  if (!player || !ground) throw new Error(`no hole ${hole} or no player in ${files.ground}, ${files.player}`);
  const model = playerModel(player);
  const solution = solveHole(ground, model);
  return drawPlan(solution, planHole(solution, model), format);
}

/** All sheets of a plan. */
export function drawPlan(solution: HoleSolution, plan: HolePlan, format: Format): Drawn {
  const { ground } = solution;
  const choices = plan.shots.map((s) => s.choice);
  const charted = { ground, choices, course: 'Tolvane Links', wind: WIND, strokesAtRest: solution.strokesAtRest.bind(solution) };
  const { size, phone, units } = FORMATS[format];
  const tee: BallState = { at: ground.ball, lie: 'tee' };
  return {
    solution,
    plan,
    sheets: [
      { scene: scene(charted, size, units, { phone }), from: tee },
      ...choices.map((choice, shot) => ({
        scene: scene({ ...charted, shot }, size, units, { phone }),
        from: choice.from,
      })),
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

/** Texts that stand on a block of the frame, its own apart: on the title block, or on the rose or its words. */
export function onBlocks(drawn: Scene): string[] {
  const blocks = drawn.marks.flatMap((m) =>
    m.kind === 'fill' && m.layer === 'frame' && m.role === 'sheet' && m.rings.length === 1 ? m.rings : [],
  );
  const others = textsOf(drawn).filter((t) => t.layer !== 'frame');
  return others.flatMap((t) => {
    const quad = boxOfText(t);
    const on = blocks.some((ring) => quadsMeet(quad, boxAround(ring)) && ringMeets(ring, quad));
    return on ? [t.text] : [];
  });
}

const GROUNDS = ['tint', 'trees', 'fairway', 'green', 'tee', 'sand', 'water'] as const;

/** Kinds of ground that a sheet without its tints leaves bare, or that have the hatch and edge of another. */
export function alike(drawn: Scene): string[] {
  const looks = GROUNDS.flatMap((layer) => {
    const marks = drawn.marks.filter((m) => m.layer === layer);
    const lines = marks.flatMap((m) =>
      m.kind === 'dots'
        ? [`dots of ${m.radiusPx}`]
        : m.kind === 'stroke'
          ? [`${Math.max(...m.lines.map((l) => l.length)) > 2 ? 'line' : 'dashes'} of ${m.widthPx}`]
          : [],
    );
    return marks.length === 0 ? [] : [{ layer, look: [...new Set(lines)].toSorted().join(', ') }];
  });
  return looks.flatMap((a, i) => [
    ...(a.look === '' ? [`${a.layer} is bare`] : []),
    ...looks.slice(i + 1).flatMap((b) => (a.look === b.look ? [`${a.layer} is like ${b.layer}: ${a.look}`] : [])),
  ]);
}

type Places = readonly { readonly x: number; readonly y: number }[];

function boxAround(ring: Places): Parameters<typeof quadsMeet>[0] {
  const [xs, ys] = [ring.map((p) => p.x), ring.map((p) => p.y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** Does a convex ring have any side wholly beyond which a box does not lie? */
const ringMeets = (ring: Places, quad: Places): boolean =>
  ring.every((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const reach = (c: { readonly x: number; readonly y: number }): number =>
      (b.y - a.y) * (c.x - a.x) - (b.x - a.x) * (c.y - a.y);
    const inside = Math.max(...ring.map(reach)) > 1e-9 ? 1 : -1;
    return quad.some((c) => inside * reach(c) > 0);
  });

/**
 * How far contours are from queries, in rising order: `count` places drawn evenly along the lines of a sheet with a seed, each compared with the best
 * stroke from there, or with the putts on the green.
 */
export function queryErrors({ solution }: Drawn, sheet: Drawn['sheets'][number], count: number): number[] {
  const pieces = contourPieces(sheet.scene);
  const length = pieces.at(-1)?.to ?? 0;
  const random = randomFrom(count);
  return Array.from({ length: length === 0 ? 0 : count }, () => {
    const along = random.next() * length;
    const piece = pieces.find((p) => p.to >= along);
    if (!piece) throw new Error('no piece of a line so far along');
    const share = (piece.to - along) / piece.length;
    const q = { x: piece.b.x + share * (piece.a.x - piece.b.x), y: piece.b.y + share * (piece.a.y - piece.b.y) };
    return Math.abs(query(solution, groundAt(sheet.scene.placing, q)) - piece.strokes);
  }).toSorted((a, b) => a - b);
}

function query(solution: HoleSolution, at: PlanePoint): number {
  const surface = solution.surfaceAt(at);
  // on the green the strokes are a table, so that reading it at the place is the query
  if (surface === 'green') return solution.strokesAtRest(at, { at, lie: 'fairway' });
  if (surface === 'out') return Infinity;
  return solution.best({ at, lie: surface }, 0.001)[0]?.strokes ?? Infinity;
}

function contourPieces(drawn: Scene) {
  let to = 0;
  return drawn.marks.flatMap((m) => {
    if (m.kind !== 'stroke' || m.strokes === undefined) return [];
    const { strokes } = m;
    return m.lines.flatMap((line) =>
      line.slice(1).map((b, i) => {
        const a = line[i] ?? b;
        const length = Math.hypot(b.x - a.x, b.y - a.y);
        to += length;
        return { a, b, length, to, strokes };
      }),
    );
  });
}

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
