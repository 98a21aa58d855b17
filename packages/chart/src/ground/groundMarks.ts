import type { Area, Polygon } from '@leeway/engine';
import { areaSqM, boxOf, boxesMeet, centroid, cutOut, insidePolygon } from '@leeway/engine';
import { Clipper, FillRule } from 'clipper2-ts';
import { type Fill, type Layer, LAYERS, type Line, type Mark, type Role, type Stroke, type Xy } from '../marks.ts';
import { circle, dashed, keepWhere, lengthPx, placeOn, shut } from '../plane/line.ts';
import { inRect, quadOf } from '../plane/quad.ts';
import { randomOf } from '../plane/seed.ts';
import type { Sheet } from '../sheet.ts';
import { jittered, tuft } from './hatch.ts';
import { BARE, type Cover, ringsOn } from './cover.ts';
import { insetM } from './mapped.ts';

/** Shore lines: px from the bank, and how strong each is. */
const SHORES = [
  [2.9, 0.9, 0.85],
  [5.6, 0.75, 0.65],
  [9, 0.65, 0.45],
  [13, 0.6, 0.3],
] as const;
const ROUGH = { stepPx: 9, dotPx: 0.55, jitter: 0.42 };
const SAND = { stepPx: 3.4, dotPx: 0.62, jitter: 0.3, lipPx: 2.6, lipStepPx: 3.6 };
const FAIRWAY_DASH = [5, 2.2];
const BOUNDS_DASH = [9, 3, 1.4, 3];
const SCRUB_DASH = [0.01, 2.6];
/** Trees of less ground than this are drawn one by one. */
const SINGLE_TREE_SQ_M = 120;

/** The ground of a sheet: every kind has a tint, and a hatch or an edge of its own that is seen without it. */
export function groundMarks(sheet: Sheet, cover: Cover): Mark[] {
  const rough: Place = { sheet, cover, index: BARE };
  const mapped = onSheet(sheet, cover.mapped);
  const { widthPx, heightPx } = sheet.size;
  const paper = quadOf({ left: 0, top: 0, right: widthPx, bottom: heightPx });
  const marks: Mark[] = [
    { kind: 'fill', layer: 'tint', role: 'sheet', rings: [paper] },
    { kind: 'fill', layer: 'tint', role: 'rough', rings: mapped },
    roughDots('rough', mapped, rough),
  ];
  for (const [index, area] of cover.areas.entries()) {
    const rings = onSheet(sheet, ringsOn(sheet, uncovered(cover.areas, index)));
    if (rings.length > 0) marks.push(...areaMarks(area, rings, { sheet, cover, index }));
  }
  return [...marks, ...limitMarks(sheet, cover, paper)];
}

const TINTS: { readonly [S in Area['surface']]?: Role } = {
  recovery: 'scrub',
  fairway: 'sheet',
  green: 'green',
  bunker: 'ink',
  penalty: 'sea',
  out: 'sheet',
};

/** The ground in its tints alone, each with a fine edge, for a plan too small for hatches; sand is black. */
export function tintMarks(sheet: Sheet, cover: Cover): Mark[] {
  const { widthPx, heightPx } = sheet.size;
  const paper = quadOf({ left: 0, top: 0, right: widthPx, bottom: heightPx });
  const areas = cover.areas.flatMap((area, index): Mark[] => {
    const role = TINTS[area.surface];
    const isTree = area.surface === 'recovery' && areaSqM(area.polygon) < SINGLE_TREE_SQ_M;
    if (role === undefined || isTree) return [];
    const rings = onSheet(sheet, ringsOn(sheet, uncovered(cover.areas, index)));
    const layer = LAYER_OF[area.surface];
    const lines = edgesOf(area, { sheet, cover, index });
    const edge = { kind: 'stroke', layer, role: 'ink', lines, closed: false, widthPx: 0.6 } as const;
    return [{ kind: 'fill', layer, role, rings }, ...(area.surface === 'recovery' ? [] : [edge])];
  });
  return [
    { kind: 'fill', layer: 'tint', role: 'sheet', rings: [paper] },
    { kind: 'fill', layer: 'tint', role: 'rough', rings: onSheet(sheet, cover.mapped) },
    ...areas,
    ...limitMarks(sheet, cover, paper),
  ];
}

/** Beyond the ground that is charted the paper is left bare; a fine line says where that begins. */
function limitMarks(sheet: Sheet, cover: Cover, paper: Line): Mark[] {
  const charted = onSheet(sheet, cover.charted);
  const edge = cover.charted.flatMap((ring) =>
    keepWhere(shut(ring), (q) => inRect(q, sheet.inner) && cover.surfaceAt(q) !== 'out' && cover.isMapped(q)),
  );
  return [
    { kind: 'fill', layer: 'bounds', role: 'sheet', rings: [paper, ...charted] },
    { kind: 'stroke', layer: 'bounds', role: 'ink', lines: edge, closed: false, widthPx: 0.7 },
  ];
}

interface Place {
  readonly sheet: Sheet;
  readonly cover: Cover;
  readonly index: number;
}

/** Closed rings, of which only what is inside the frame. */
const onSheet = ({ inner }: Sheet, rings: readonly Line[]): Line[] =>
  Clipper.intersectD(
    rings.map((ring) => [...ring]),
    [[...quadOf(inner)]],
    FillRule.EvenOdd,
    3,
  );

const layerOf = (area: Area): number => LAYERS.indexOf(LAYER_OF[area.surface]);
const LAYER_OF: { readonly [S in Area['surface']]: Layer } = {
  rough: 'tint',
  recovery: 'trees',
  fairway: 'fairway',
  green: 'green',
  tee: 'tee',
  bunker: 'sand',
  penalty: 'water',
  out: 'bounds',
};

/** An area less what lies on it but is drawn before it: an island is not painted over by its water. */
function uncovered(areas: readonly Area[], index: number): Polygon[] {
  const area = areas[index];
  if (area === undefined) return [];
  const box = boxOf(area.polygon.outer);
  const over = areas
    .slice(index + 1)
    .filter((a) => layerOf(a) < layerOf(area) && boxesMeet(box, boxOf(a.polygon.outer)))
    .map((a) => a.polygon);
  return over.reduce((left, polygon) => cutOut(left, [polygon]), [area.polygon]);
}

function areaMarks(area: Area, rings: readonly Line[], place: Place): Mark[] {
  const fill = (layer: Layer, role: Role): Fill => ({ kind: 'fill', layer, role, rings });
  const edge = (layer: Layer, role: Role, widthPx: number, dash?: readonly number[]): Stroke => {
    const lines = edgesOf(area, place);
    return {
      kind: 'stroke',
      layer,
      role,
      lines: dash ? lines.flatMap((l) => dashed(l, dash)) : lines,
      closed: false,
      widthPx,
    };
  };
  switch (area.surface) {
    case 'rough':
      return [fill('tint', 'rough'), roughDots(area.id, rings, place)];
    case 'recovery':
      return areaSqM(area.polygon) < SINGLE_TREE_SQ_M
        ? singleTree(area, place.sheet)
        : [fill('trees', 'scrub'), ...scrub(area.id, rings, place), edge('trees', 'whins', 1.5, SCRUB_DASH)];
    case 'fairway':
      return [fill('fairway', 'sheet'), edge('fairway', 'ink', 0.8, FAIRWAY_DASH)];
    case 'green':
      return [fill('green', 'green'), edge('green', 'ink', 1.25)];
    case 'tee':
      return [fill('tee', 'sheet'), edge('tee', 'ink', 0.9)];
    case 'bunker':
      return [fill('sand', 'sand'), ...sand(area.id, rings, place), edge('sand', 'ink', 0.9), lip(area, place)];
    case 'penalty':
      return [fill('water', 'sea'), ...shores(area, place), edge('water', 'contour', 1.1)];
    case 'out':
      return [fill('bounds', 'sheet'), edge('bounds', 'ink', 1.1, BOUNDS_DASH)];
  }
}

/** Is a place on paper shown ground of this area? */
const isTop = (q: Xy, { sheet, cover, index }: Place): boolean =>
  inRect(q, sheet.inner) && cover.topAt(q) === index && cover.isCharted(q);

const roughDots = (id: string, rings: readonly Line[], place: Place): Mark => ({
  kind: 'dots',
  layer: 'tint',
  role: 'stipple',
  at: jittered(rings, ROUGH, randomOf(id)).filter((q) => isTop(q, place)),
  radiusPx: ROUGH.dotPx,
});

/** An area's edge where nothing lies over it and it is on the sheet; of out of bounds only the side that faces the hole. */
function edgesOf(area: Area, { sheet, cover, index }: Place): Line[] {
  const keep = (q: Xy): boolean =>
    inRect(q, sheet.inner) && cover.topAt(q) <= index && (area.surface !== 'out' || cover.isMapped(q));
  return ringsOn(sheet, [area.polygon]).flatMap((ring) => keepWhere(shut(ring), keep));
}

const TUFT = {
  index: { stepPx: 8.6, sizePx: 4.2, jitter: 0.3 },
  shot: { stepPx: 11, sizePx: 5.6, jitter: 0.3 },
  hole: { stepPx: 8.6, sizePx: 4.2, jitter: 0.3 },
};

function scrub(id: string, rings: readonly Line[], place: Place): Mark[] {
  const { sizePx, ...grid } = TUFT[place.sheet.kind];
  const reach = 0.7 * sizePx;
  const at = jittered(rings, grid, randomOf(id)).filter((q) =>
    [-reach, reach].every(
      (x) => isTop({ x: q.x + x, y: q.y - reach }, place) && isTop({ x: q.x + x, y: q.y + reach }, place),
    ),
  );
  const lines = at.flatMap((q) => tuft(q, sizePx));
  return [{ kind: 'stroke', layer: 'trees', role: 'whins', lines, closed: false, widthPx: 0.75 }];
}

function sand(id: string, rings: readonly Line[], place: Place): Mark[] {
  const at = jittered(rings, SAND, randomOf(id)).filter((q) => isTop(q, place));
  return [{ kind: 'dots', layer: 'sand', role: 'ink', at, radiusPx: SAND.dotPx }];
}

/** Short ticks outward from the edge of sand. */
function lip(area: Area, place: Place): Mark {
  const lines: Line[] = [];
  for (const edge of edgesOf(area, place)) {
    const whole = lengthPx(edge);
    for (let s = SAND.lipStepPx / 2; s < whole; s += SAND.lipStepPx) {
      const [a, b] = [placeOn(edge, s - 0.5), placeOn(edge, s + 0.5)];
      if (!a || !b) continue;
      const step = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      const foot = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      const to = (px: number): Xy => ({ x: foot.x + ((b.y - a.y) * px) / step, y: foot.y - ((b.x - a.x) * px) / step });
      const outward = insidePolygon(place.sheet.toPlane(to(0.6)), area.polygon) ? -1 : 1;
      if (inRect(to(outward * SAND.lipPx), place.sheet.inner)) lines.push([foot, to(outward * SAND.lipPx)]);
    }
  }
  return { kind: 'stroke', layer: 'sand', role: 'ink', lines, closed: false, widthPx: 0.7 };
}

/** Lines along the bank inside the water, fading inwards. They follow the water's own edge, not that of what lies over it or of the sheet. */
function shores(area: Area, place: Place): Mark[] {
  return SHORES.map(([px, widthPx, opacity]): Mark => {
    const rings = insetM(area.polygon, px / place.sheet.pxPerM);
    const lines = rings.flatMap((ring) =>
      keepWhere(shut(ring.map((p) => place.sheet.toPaper(p))), (q) => isTop(q, place)),
    );
    return { kind: 'stroke', layer: 'water', role: 'shore', lines, closed: false, widthPx, opacity };
  });
}

/** One tree: its crown as a ring, and its stem. */
function singleTree(area: Area, sheet: Sheet): Mark[] {
  const at = sheet.toPaper(centroid(area.polygon.outer));
  const radius = Math.max(4, Math.min(9, Math.sqrt(areaSqM(area.polygon) / Math.PI) * sheet.pxPerM));
  if (![-radius, radius].every((d) => inRect({ x: at.x + d, y: at.y + d }, sheet.inner))) return [];
  const crown = circle(at, radius);
  return [
    { kind: 'fill', layer: 'bounds', role: 'sheet', rings: [crown] },
    { kind: 'stroke', layer: 'bounds', role: 'ink', lines: [crown], closed: true, widthPx: 0.9 },
    { kind: 'dots', layer: 'bounds', role: 'ink', at: [at], radiusPx: 1.3 },
  ];
}
