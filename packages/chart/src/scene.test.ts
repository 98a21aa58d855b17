import {
  distanceToEdgeM,
  distanceToLineM,
  insidePolygon,
  isMapped,
  type PlanePoint,
  type Surface,
  YARD_M,
} from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import { type Dots, LAYERS, type Layer, type Mark, type Stroke, type Xy } from './marks.ts';
import { groundAt } from './groundAt.ts';
import { scene } from './scene.ts';
import { holeSheet } from './sheet.ts';
import { svg } from './svg.ts';
import { SALT_HOLE } from './testdata/saltHole.ts';

const SIZE = { widthPx: 600, heightPx: 700 };
/** A plane that falls 0.01 strokes a metre northwards: what smoothing and interpolation leave as it is. */
const planeField = (p: PlanePoint): number => 4 - 0.01 * p.northM;

const drawn = scene({ ground: SALT_HOLE, choices: [], strokesAtRest: planeField }, SIZE, 'yd');
const sheet = holeSheet(SALT_HOLE, { size: SIZE, units: 'yd', phone: false });

/** What is painted on top at a place: the last area that holds it. */
const surfaceAt = (p: PlanePoint): Surface | 'unmapped' =>
  SALT_HOLE.areas.findLast((a) => insidePolygon(p, a.polygon))?.surface ??
  (isMapped(SALT_HOLE, p) ? 'rough' : 'unmapped');
/** Within a px of an edge, where what is drawn may fall either way. */
const nearEdge = (p: PlanePoint): boolean =>
  SALT_HOLE.areas.some((a) => distanceToEdgeM(p, a.polygon) * sheet.pxPerM < 1) || nearUnmapped(p);
const nearUnmapped = ({ eastM, northM }: PlanePoint): boolean => {
  const px = 1.5 / sheet.pxPerM;
  const around = [-px, px].flatMap((x) => [-px, px].map((y) => ({ eastM: eastM + x, northM: northM + y })));
  return new Set(around.map((p) => isMapped(SALT_HOLE, p))).size > 1;
};

const placesOf = (mark: Mark): readonly Xy[] => {
  switch (mark.kind) {
    case 'fill':
      return mark.rings.flat();
    case 'stroke':
      return mark.lines.flat();
    case 'dots':
      return mark.at;
    case 'text':
      return [mark.at];
  }
};
const dotsOf = (layer: Layer): Dots[] => drawn.marks.filter((m) => m.kind === 'dots' && m.layer === layer) as Dots[];
const strokesOf = (layer: Layer): Stroke[] =>
  drawn.marks.filter((m) => m.kind === 'stroke' && m.layer === layer) as Stroke[];

describe('a scene', () => {
  test('is the same bytes each time', () => {
    const again = scene({ ground: SALT_HOLE, choices: [], strokesAtRest: planeField }, SIZE, 'yd');
    expect(svg(again)).toBe(svg(drawn));
  });

  test('draws its layers in order, and nothing off the paper', () => {
    const layers = drawn.marks.map((m) => LAYERS.indexOf(m.layer));
    expect(layers).toEqual(layers.toSorted((a, b) => a - b));
    for (const q of drawn.marks.flatMap(placesOf)) {
      expect(q.x).toBeGreaterThanOrEqual(-0.01);
      expect(q.x).toBeLessThanOrEqual(SIZE.widthPx + 0.01);
      expect(q.y).toBeGreaterThanOrEqual(-0.01);
      expect(q.y).toBeLessThanOrEqual(SIZE.heightPx + 0.01);
    }
  });

  test('keeps every dot on its own ground: rough dots on rough, sand dots in sand, tufts among trees', () => {
    const on = (marks: readonly Mark[]) =>
      new Set(
        marks
          .flatMap(placesOf)
          .map((q) => sheet.toPlane(q))
          .filter((p) => !nearEdge(p))
          .map(surfaceAt),
      );
    expect(dotsOf('tint').flatMap((d) => d.at).length).toBeGreaterThan(500);
    expect(on(dotsOf('tint'))).toEqual(new Set(['rough']));
    expect(dotsOf('sand').flatMap((d) => d.at).length).toBeGreaterThan(50);
    expect(on(dotsOf('sand'))).toEqual(new Set(['bunker']));
    const [tufts] = strokesOf('trees');
    expect(tufts?.lines.length).toBeGreaterThan(40);
    expect(on(tufts ? [tufts] : [])).toEqual(new Set(['recovery']));
  });

  test('draws shore lines inside the water at their distances from the bank, never over the island', () => {
    const pond = SALT_HOLE.areas.find((a) => a.id === 'pond');
    const green = SALT_HOLE.areas.find((a) => a.id === 'green');
    if (!pond || !green) throw new Error('the hole has lost its pond or its green');
    const shores = strokesOf('water').filter((s) => s.role === 'shore');
    expect(shores).toHaveLength(4);
    for (const [i, px] of [2.9, 5.6, 9, 13].entries()) {
      const places = (shores[i]?.lines ?? []).flat().map((q) => sheet.toPlane(q));
      expect(places.length).toBeGreaterThan(3);
      for (const p of places) {
        const awayPx = distanceToEdgeM(p, pond.polygon) * sheet.pxPerM;
        expect(insidePolygon(p, pond.polygon) || awayPx < 0.1).toBe(true);
        expect(Math.abs(awayPx - px)).toBeLessThan(0.6);
        expect(insidePolygon(p, green.polygon) && distanceToEdgeM(p, green.polygon) > 0.2).toBe(false);
      }
    }
  });

  test('an island is not painted over by its water, whose layer comes later', () => {
    const flag = sheet.toPaper({ eastM: SALT_HOLE.flag.eastM - 8, northM: SALT_HOLE.flag.northM });
    const covering = drawn.marks.filter(
      (m) => m.kind === 'fill' && m.layer !== 'frame' && m.rings.length > 0 && evenOdd(flag, m.rings),
    );
    expect(covering.at(-1)?.role).toBe('green');
  });

  test('tells each kind of ground without its tint, by a hatch or an edge that no other kind has', () => {
    const looks = (['trees', 'fairway', 'green', 'tee', 'sand', 'water'] as const).map((layer) =>
      drawn.marks
        .filter((m) => m.layer === layer && (m.kind === 'stroke' || m.kind === 'dots'))
        .map((m) => {
          if (m.kind === 'dots') return `dots ${m.radiusPx}`;
          const dashes = m.kind === 'stroke' && m.lines.length > 12;
          return m.kind === 'stroke' ? `${dashes ? 'broken' : 'whole'} ${m.widthPx}` : '';
        })
        .join(', '),
    );
    for (const look of looks) expect(look).not.toBe('');
    expect(new Set(looks).size).toBe(looks.length);
    expect(strokesOf('bounds').some((s) => s.lines.length > 12)).toBe(true);
  });

  test('numbers its marks from the ball in the units asked for', () => {
    const metres = scene({ ground: SALT_HOLE, choices: [] }, SIZE, 'm');
    const words = (s: typeof drawn) => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []));
    expect(words(drawn)).toContain('yards');
    expect(words(metres)).toContain('metres');
    expect(words(metres)).toContain('Hole 3, par 3, 150 metres');
    expect(words(drawn)).toContain(`Hole 3, par 3, ${Math.round(150.12 / YARD_M)} yards`);
  });

  test('leaves contours out where the strokes are not known', () => {
    const bare = scene({ ground: SALT_HOLE, choices: [] }, SIZE, 'yd');
    expect(bare.marks.some((m) => m.layer === 'contours')).toBe(false);
    expect(bare.description).not.toMatch(/Contours/);
  });

  test('tells the ground under each of its places', () => {
    for (const q of [
      { x: 20, y: 30 },
      { x: 401, y: 555 },
    ]) {
      const [told, known] = [groundAt(drawn.placing, q), sheet.toPlane(q)];
      expect(told.eastM).toBeCloseTo(known.eastM, 9);
      expect(told.northM).toBeCloseTo(known.northM, 9);
    }
  });

  test('refuses a shot that the plan does not have', () => {
    expect(() => scene({ ground: SALT_HOLE, choices: [], shot: 0 }, SIZE, 'yd')).toThrow(RangeError);
  });
});

describe('contours', () => {
  const contours = strokesOf('contours');

  test('of a plane are where the plane has their value', () => {
    expect(contours.length).toBeGreaterThan(10);
    for (const contour of contours) {
      const off = contour.lines.flat().map((q) => Math.abs(planeField(sheet.toPlane(q)) - (contour.strokes ?? 0)));
      // Beside water the smoothing sees one side only: there a line moves by up to a metre and a half.
      expect(Math.max(...off)).toBeLessThan(0.015);
      expect(off.toSorted((a, b) => a - b)[off.length >> 1]).toBeLessThan(0.002);
    }
  });

  test('are each 0.1, heavy each 0.5, with a bold figure', () => {
    for (const { strokes = 0, widthPx } of contours) {
      expect(strokes * 10).toBeCloseTo(Math.round(strokes * 10), 6);
      expect(widthPx).toBe(Math.round(strokes * 10) % 5 === 0 ? 1.9 : 0.95);
    }
    const figures = drawn.marks.flatMap((m) => (m.kind === 'text' && m.layer === 'contours' ? [m] : []));
    expect(figures.length).toBeGreaterThan(3);
    for (const figure of figures) {
      expect(figure.font.weight).toBe(Number(figure.text) % 0.5 === 0 ? 700 : 500);
      expect(Math.abs(figure.turnRad)).toBeLessThan(Math.PI / 2);
    }
  });

  test('keep off water, sand and the bounds', () => {
    const field = SALT_HOLE.areas.find((a) => a.surface === 'out');
    if (!field) throw new Error('the hole has lost its bounds');
    const bounds = [...field.polygon.outer, ...field.polygon.outer.slice(0, 1)];
    const places = contours.flatMap((c) => c.lines.flat()).map((q) => sheet.toPlane(q));
    for (const p of places) expect(distanceToLineM(p, bounds)).toBeGreaterThan(3.3);
    for (const p of places.filter((q) => !nearEdge(q)))
      expect(['rough', 'recovery', 'fairway', 'green', 'tee']).toContain(surfaceAt(p));
  });
});

describe('SVG', () => {
  const text = svg(drawn);

  test('is an image with a title and a description, letters escaped', () => {
    expect(text).toMatch(/^<svg [^>]*role="img"/);
    expect(text).toContain('<title>Chart of Salt &amp; &lt;Pepper&gt;</title>');
    expect(text).toMatch(/<desc>Hole 3, par 3, 164 yards\. On it: 1 bunker, Salt Pond, Long Wood, trees or scrub\./);
  });

  test('has no patterns, masks, clips or scripts, no number that is none, and every tag is closed', () => {
    expect(text).not.toMatch(/<(pattern|mask|clipPath|script|image|style)|NaN|undefined|Infinity/);
    expect(text.match(/<g /g)?.length).toBe(text.match(/<\/g>/g)?.length);
    expect(text.match(/<text /g)?.length).toBe(text.match(/<\/text>/g)?.length);
  });

  test('gives each colour as a custom property with the printed sheet’s own behind it', () => {
    expect(text).toContain('fill="#D3E3E7" style="fill:var(--sea,#D3E3E7)"');
    expect(text).toContain('stroke="#2C6079" style="stroke:var(--contour,#2C6079)"');
  });
});

function evenOdd(p: Xy, rings: readonly (readonly Xy[])[]): boolean {
  let inside = false;
  for (const ring of rings) {
    for (const [i, b] of ring.entries()) {
      const a = ring.at(i - 1) ?? b;
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
    }
  }
  return inside;
}
