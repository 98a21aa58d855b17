import { areaSqM, boxOf, boxesMeet, disc, sharedAreaSqM, strip } from '@leeway/engine';
import type { Area, Polygon, Surface } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { Water } from './meaning.ts';
import type { NearPiece } from './nearHole.ts';
import type { Piece } from './piece.ts';

/** Plain water that shares this much of its ground with a golf water is the same water, mapped twice. */
const SAME_WATER = 0.8;

/** The painted ground of a hole, out of bounds apart: its own green as green, other greens as fairway, driving ranges as rough. */
export function areasOf(near: readonly NearPiece[], green: Piece, book: FaultBook): Area[] {
  const areas: Area[] = [];
  const waters: { readonly area: Area; readonly water: Water; readonly order: number }[] = [];
  const at = (n: NearPiece, surface: Surface, polygon: Polygon): Area => ({
    id: n.piece.id,
    surface,
    ...(n.piece.name === undefined ? {} : { name: n.piece.name }),
    polygon,
  });
  for (const n of near) {
    const { meaning } = n.piece;
    switch (meaning.kind) {
      case 'green':
        areas.push(...n.polygons.map((p) => at(n, n.piece === green ? 'green' : 'fairway', p)));
        break;
      case 'tee':
        areas.push(...n.polygons.map((p) => at(n, 'tee', p)));
        break;
      case 'range':
        book.add(
          {
            code: 'driving-range',
            level: 'note',
            found: 'a driving range',
            expected: 'ground of the course',
            done: 'it plays as rough',
          },
          n.piece.id,
        );
        areas.push(...n.polygons.map((p) => at(n, 'rough', p)));
        break;
      case 'ground': {
        const polygons = groundOf(n, meaning.widthM);
        const { water } = meaning;
        if (water === undefined) areas.push(...polygons.map((p) => at(n, meaning.surface, p)));
        else {
          const order = water.golf ? 2 : n.polygons.length > 0 ? 1 : 0;
          const barred = water.barred === true ? { barred: true } : {};
          for (const p of polygons)
            waters.push({ area: { ...at(n, 'penalty', p), red: water.red, ...barred }, water, order });
        }
        break;
      }
      default:
        break;
    }
  }
  const golfWaters = waters.filter((w) => w.water.golf);
  for (const w of waters.toSorted((a, b) => a.order - b.order)) {
    const twin = w.order === 1 ? golfWaters.find((g) => isSame(w.area.polygon, g.area.polygon)) : undefined;
    if (twin === undefined) areas.push(w.area);
    else
      book.add(
        {
          code: 'same-water',
          level: 'note',
          found: `water that ${twin.area.id} maps as well`,
          expected: 'each water once',
          done: 'the golf tag counts',
        },
        w.area.id,
      );
  }
  return areas;
}

function groundOf(n: NearPiece, widthM: number | undefined): readonly Polygon[] {
  if (n.polygons.length > 0 || widthM === undefined) return n.polygons;
  return n.point ? [disc(n.point, widthM / 2)] : n.lines.flatMap((l) => strip(l, widthM));
}

function isSame(a: Polygon, b: Polygon): boolean {
  const [areaA, areaB] = [areaSqM(a), areaSqM(b)];
  if (Math.min(areaA, areaB) < SAME_WATER * Math.max(areaA, areaB)) return false;
  if (!boxesMeet(boxOf(a.outer), boxOf(b.outer))) return false;
  const sharedSqM = sharedAreaSqM(a, b);
  return sharedSqM >= SAME_WATER * (areaA + areaB - sharedSqM);
}
