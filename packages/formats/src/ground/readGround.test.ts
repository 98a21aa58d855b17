import { areaSqM, insidePolygon, YARD_M } from '@leeway/engine';
import type { HoleGround } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import { readGround } from './readGround.ts';
import type { GroundOptions } from './readGround.ts';
import { degrees, toGeoJson, toOsmJson, toOsmXml } from './testdata/made.ts';
import type { Made } from './testdata/made.ts';
import { area, box, line, point, TOLVANE, tolvaneWith } from './testdata/tolvane.ts';

const read = (made: readonly Made[], options: GroundOptions = {}) =>
  readGround(toGeoJson(made), 'tolvane.geojson', options);
const holesOf = (made: readonly Made[]): readonly HoleGround[] => read(made).value?.holes ?? [];
const hole = (made: readonly Made[], name: string): HoleGround => {
  const found = holesOf(made).find((h) => h.hole === name);
  if (!found) throw new Error(`hole ${name} was not read`);
  return found;
};
const codes = (made: readonly Made[], options: GroundOptions = {}): string[] =>
  read(made, options).faults.map((f) => f.code);

/** What is painted on top at a place, in metres from the course's origin. */
function surfaceAt(h: HoleGround, spot: readonly [number, number]): string {
  const [lon, lat] = degrees(spot);
  const p = h.frame.toPlane({ lon, lat });
  return h.areas.findLast((a) => insidePolygon(p, a.polygon))?.surface ?? 'none';
}

describe('a course without faults', () => {
  test('gives its holes in order, its name, and no fault', () => {
    const { value, faults } = read(TOLVANE);
    expect(faults).toEqual([]);
    expect(value?.course).toBe('Tolvane & Common');
    expect(value?.attribution).toContain('OpenStreetMap');
    expect(value?.holes.map((h) => [h.hole, h.name, h.par, h.parGuessed, h.flagFrom])).toEqual([
      ['1', 'Long Acre', 4, false, 'pin'],
      ['2', 'Island (Par 3)', 3, false, 'line end'],
      ['3', undefined, 4, false, 'pin'],
    ]);
  });

  test('reads the same from all three formats', () => {
    const seen = (text: string): unknown =>
      readGround(text, 'tolvane').value?.holes.map((h) => ({
        hole: h.hole,
        line: h.line,
        flag: h.flag,
        cautions: h.cautions.map((c) => `${c.id} ${c.kind}`).toSorted(),
        areas: h.areas.map((a) => `${a.id} ${a.surface} ${areaSqM(a.polygon).toFixed(3)}`).toSorted(),
      }));
    const geoJson = seen(toGeoJson(TOLVANE));
    expect(seen(toOsmXml(TOLVANE))).toEqual(geoJson);
    expect(seen(toOsmJson(TOLVANE, true))).toEqual(geoJson);
    expect(seen(toOsmJson(TOLVANE, false))).toEqual(geoJson);
  });

  test('measures the hole on the ellipsoid, from the first node', () => {
    const one = hole(TOLVANE, '1');
    expect(one.ball).toEqual({ eastM: 0, northM: 0 });
    expect(one.line[2]?.northM).toBeCloseTo(350, 1);
    expect(one.flag.northM).toBeCloseTo(354, 1);
  });

  test('paints rough, trees, fairway, green, tee, bunker, water, out of bounds', () => {
    const one = hole(TOLVANE, '1');
    for (const [spot, surface] of [
      [[0, 0], 'tee'],
      [[-50, 100], 'rough'],
      [[0, 100], 'fairway'],
      [[0, 350], 'green'],
      [[18, 340], 'bunker'],
      [[-100, 60], 'recovery'],
      [[-100, 120], 'none'],
      [[26, 262], 'recovery'],
      [[40, 280], 'recovery'],
      [[0, 206.9], 'penalty'],
      [[0, 207.2], 'rough'],
      [[150, 300], 'out'],
    ] as const)
      expect([spot, surfaceAt(one, spot)]).toEqual([spot, surface]);
  });

  test('an island green with its bunker lies over the water; for another hole it is fairway and a caution', () => {
    const [one, two] = [hole(TOLVANE, '1'), hole(TOLVANE, '2')];
    expect(surfaceAt(two, [85, 186])).toBe('green');
    expect(surfaceAt(two, [91, 190])).toBe('bunker');
    expect(surfaceAt(two, [70, 180])).toBe('penalty');
    expect(surfaceAt(one, [85, 186])).toBe('fairway');
    expect(one.cautions.filter((c) => c.kind === 'green').map((c) => c.id)).toEqual(['way/32']);
  });

  test('colours water: a golf tag decides, plain water and streams are red', () => {
    const reds = hole(tolvaneWith({}, area('way/99', { landuse: 'basin' }, box(-30, 20, -22, 30))), '1').areas;
    const red = (id: string) => reds.find((a) => a.id === id)?.red;
    expect([red('way/71'), red('way/72'), red('way/73'), red('way/99')]).toEqual([true, false, true, true]);
    expect(reds.find((a) => a.id === 'way/73')?.name).toBe('Tolvane Brook');
  });

  test('warns of other tees, roads, paths and buildings, and not of its own tees', () => {
    const { cautions } = hole(TOLVANE, '1');
    expect(cautions.map((c) => `${c.kind} ${c.id}`).toSorted()).toEqual([
      'building way/93',
      'green way/32',
      'path way/92',
      'road way/91',
      'tee way/22',
      'tee way/23',
    ]);
  });
});

describe('faults that maps really have', () => {
  test('a line that runs from green to tee is turned round', () => {
    const turned = tolvaneWith({
      'way/13': line('way/13', { golf: 'hole', ref: '3', par: '4' }, [70, -180], [60, 150]),
    });
    expect(codes(turned)).toEqual(['reversed-line']);
    expect(hole(turned, '3').flag.northM).toBeCloseTo(-328, 0);
  });

  test('a hole without a green is left out, and the others stand', () => {
    const made = tolvaneWith({ 'way/33': undefined });
    expect(codes(made)).toEqual(['no-green']);
    expect(holesOf(made).map((h) => h.hole)).toEqual(['1', '2']);
    expect(read(made, { hole: '3' })).toMatchObject({ faults: [{ code: 'no-green', level: 'refused' }] });
    expect(read(made, { hole: '3' }).value).toBeUndefined();
  });

  test('a line that stops short of its green takes the nearest', () => {
    const made = tolvaneWith({
      'way/11': line('way/11', { golf: 'hole', ref: '1', par: '4' }, [0, 0], [0, 320]),
      'node/34': undefined,
    });
    expect(codes(made)).toEqual(['line-off-green']);
    expect(hole(made, '1').flagFrom).toBe('green centre');
  });

  test('a pin with the number but outside the green is passed over', () => {
    const made = tolvaneWith({ 'node/34': point('node/34', { golf: 'pin', ref: '1' }, [3, 320]) });
    expect(codes(made)).toEqual(['pin-off-green']);
    expect(hole(made, '1').flagFrom).toBe('line end');
  });

  test('a start outside every tee, and a hole without a tee, are said', () => {
    const off = tolvaneWith({ 'way/21': area('way/21', { golf: 'tee' }, box(-5, 10, 5, 20)) });
    expect(read(off).faults[0]?.found).toMatch(/starts 10\.0 m outside/);
    expect(codes(tolvaneWith({ 'way/21': undefined }))).toEqual(['start-off-tee']);
  });

  test('the line of the driving range is no hole, and the range plays as rough', () => {
    const range = area('way/98', { golf: 'driving_range' }, box(-140, -200, -80, 0));
    const made = tolvaneWith({}, range, line('way/97', { golf: 'hole', ref: '0' }, [-110, -10], [-110, -190]));
    expect(codes(made).toSorted()).toEqual(['driving-range', 'range-line']);
    expect(surfaceAt(hole(made, '1'), [-100, -20])).toBe('rough');
    expect(holesOf(made)).toHaveLength(3);
  });

  test('par comes from the tag, the name, or the length', () => {
    const guessed = tolvaneWith({
      'way/13': line('way/13', { golf: 'hole', ref: '3', par: 'four' }, [60, 150], [70, -180]),
    });
    expect(codes(guessed)).toEqual(['bad-par', 'no-par']);
    expect(hole(guessed, '3')).toMatchObject({ par: 4, parGuessed: true });
  });

  test('a line without a number takes that of its pin, else its id', () => {
    const unnumbered = (pin: Made | undefined) =>
      tolvaneWith({
        'way/11': line('way/11', { golf: 'hole', par: '4' }, [0, 0], [0, 350]),
        'node/34': pin,
        'node/24': undefined,
      });
    expect(holesOf(unnumbered(point('node/34', { golf: 'pin', ref: '1' }, [3, 354]))).map((h) => h.hole)).toEqual([
      '1',
      '2',
      '3',
    ]);
    expect(holesOf(unnumbered(undefined)).map((h) => h.hole)).toEqual(['2', '3', 'way/11']);
  });

  test('two holes of one number: told apart by their courses, else the first is kept', () => {
    const second = (tags: Made['tags']) =>
      line('way/14', { golf: 'hole', ref: '1', par: '4', ...tags }, [60, 150], [70, -180]);
    const plain = tolvaneWith({ 'way/13': undefined }, second({}));
    expect(codes(plain)).toContain('duplicate-ref');
    expect(holesOf(plain)).toHaveLength(2);
    const named = tolvaneWith(
      {
        'way/11': line('way/11', { golf: 'hole', ref: '1', par: '4', 'golf:course:name': 'Mere' }, [0, 0], [0, 350]),
        'way/13': undefined,
      },
      second({ 'golf:course:name': 'Common' }),
    );
    expect(holesOf(named).map((h) => h.hole)).toEqual(['Common 1', 'Mere 1', 'Tolvane & Common 2']);
    expect(codes(named, { hole: '1' })).toEqual(['which-course']);
    expect(read(named, { hole: 'Mere 1' }).value?.holes).toHaveLength(1);
  });

  test('a green of no hole is said, and plays as fairway', () => {
    const made = tolvaneWith({}, area('way/36', { golf: 'green' }, box(-40, -19, -35, -14)));
    expect(codes(made)).toEqual(['spare-green']);
    expect(surfaceAt(hole(made, '1'), [-37, -16])).toBe('fairway');
  });

  test('two outlines, a coastline and an unknown golf tag are said', () => {
    const made = tolvaneWith(
      {},
      area('way/2', { leisure: 'golf_course' }, box(-100, -100, 100, 100)),
      line('way/96', { natural: 'coastline' }, [-400, -400], [-400, 400]),
      area('way/99', { golf: 'fringe' }, box(-20, 360, -14, 366)),
    );
    expect(codes(made)).toEqual(['unknown-golf-tag', 'several-outlines', 'coastline']);
    expect(read(made).faults[1]?.at).toBe('way/1, way/2');
  });

  test('a self-crossing bunker is mended, an open one closed, a point for one left out', () => {
    const crossing = tolvaneWith(
      {},
      area('way/99', { golf: 'bunker' }, [
        [-30, 300],
        [-20, 310],
        [-20, 300],
        [-30, 310],
      ]),
    );
    expect(codes(crossing)).toEqual(['ring-crossing']);
    expect(hole(crossing, '1').areas.filter((a) => a.id === 'way/99')).toHaveLength(2);
    const open = tolvaneWith({}, line('way/99', { golf: 'bunker' }, [-30, 300], [-20, 300], [-20, 310], [-30, 310]));
    expect(read(open).faults).toMatchObject([{ code: 'open-area', level: 'left out', at: 'way/99' }]);
    const ajar = tolvaneWith(
      {},
      line('way/99', { golf: 'bunker' }, [-30, 300], [-20, 300], [-20, 310], [-30, 310], [-30, 303]),
    );
    expect(read(ajar).faults).toMatchObject([{ code: 'open-area', level: 'note' }]);
    expect(surfaceAt(hole(ajar, '1'), [-25, 305])).toBe('bunker');
    expect(codes(tolvaneWith({}, point('node/99', { golf: 'bunker' }, [-30, 300])))).toEqual(['point-for-area']);
  });

  test('water mapped twice is one, and its golf tag counts', () => {
    const made = tolvaneWith({}, area('way/99', { natural: 'water' }, box(30, 10.5, 52, 40)));
    expect(codes(made)).toEqual(['same-water']);
    expect(hole(made, '1').areas.some((a) => a.id === 'way/99')).toBe(false);
  });

  test('a stream in a pipe is not there, and one with a width is that wide', () => {
    const piped = tolvaneWith({
      'way/73': line('way/73', { waterway: 'stream', tunnel: 'culvert' }, [-70, 206], [45, 206]),
    });
    expect(surfaceAt(hole(piped, '1'), [0, 206])).not.toBe('penalty');
    const wide = tolvaneWith({ 'way/73': line('way/73', { waterway: 'river', width: '6 m' }, [-70, 206], [45, 206]) });
    expect(surfaceAt(hole(wide, '1'), [0, 208.8])).toBe('penalty');
  });

  test('a golf water drawn as a line is a stream of its colour, and one that all but closes a pond', () => {
    const ditch = tolvaneWith({}, line('way/99', { golf: 'water_hazard', width: '4' }, [-40, 20], [-40, 180]));
    expect(codes(ditch)).toEqual([]);
    expect(hole(ditch, '1').areas.find((a) => a.id === 'way/99')?.red).toBe(false);
    expect(surfaceAt(hole(ditch, '1'), [-38.5, 100])).toBe('penalty');
    const pond = tolvaneWith(
      {},
      line('way/99', { golf: 'water_hazard' }, [-50, 20], [-30, 20], [-30, 40], [-50, 40], [-50, 22]),
    );
    expect(codes(pond)).toEqual(['open-area']);
    expect(surfaceAt(hole(pond, '1'), [-40, 30])).toBe('penalty');
  });

  test('a point of water is no pond', () => {
    const made = tolvaneWith({}, point('node/99', { waterway: 'waterfall_basin' }, [0, 100]));
    expect(codes(made)).toEqual(['point-for-area']);
    expect(surfaceAt(hole(made, '1'), [0, 100])).toBe('fairway');
  });

  test('a course across 180 degrees reads like any other', () => {
    const across = toGeoJson(TOLVANE).replaceAll(/\[(-\d+\.?\d*),/g, (_, lon: string) => {
      const moved = Number(lon) + 209.9995;
      return `[${(moved > 180 ? moved - 360 : moved).toFixed(7)},`;
    });
    expect(across).toContain('[-179.');
    const { value, faults } = readGround(across, 'f');
    expect(faults).toEqual([]);
    const here = read(TOLVANE).value?.holes ?? [];
    for (const [i, h] of (value?.holes ?? []).entries()) {
      expect(h.areas.map((a) => a.id)).toEqual(here[i]?.areas.map((a) => a.id));
      expect(h.flag.eastM).toBeCloseTo(here[i]?.flag.eastM ?? NaN, 1);
    }
  });

  test('numbers and booleans among the properties are read', () => {
    const text = toGeoJson(TOLVANE).replace('"ref":"1","par":"4"', '"ref":1,"par":5,"lit":false');
    expect(readGround(text, 'f').value?.holes[0]).toMatchObject({ hole: '1', par: 5 });
  });
});

describe('out of bounds', () => {
  test('an area round the tee or green is the boundary, and this is said', () => {
    const made = tolvaneWith({ 'way/95': area('way/95', { golf: 'out_of_bounds' }, box(-140, -240, 110, 405)) });
    expect(codes(made)).toEqual(['boundary']);
    const one = hole(made, '1');
    expect(surfaceAt(one, [0, 100])).toBe('fairway');
    expect(surfaceAt(one, [0, 406])).toBe('out');
    expect(surfaceAt(one, [900, 0])).toBe('out');
  });

  test('a boundary that leaves out the tee is said; one that leaves out the green leaves no hole', () => {
    const tight = tolvaneWith({ 'way/95': area('way/95', { golf: 'out_of_bounds' }, box(-140, 300, 60, 405)) });
    expect(codes(tight, { hole: '1' })).toEqual(['boundary', 'ball-out']);
    const tee = tolvaneWith({ 'way/95': area('way/95', { golf: 'out_of_bounds' }, box(-140, -240, 60, 300)) });
    expect(codes(tee)).toContain('flag-out');
    expect(holesOf(tee).map((h) => h.hole)).not.toContain('1');
  });

  test('its inner ring is in', () => {
    const made = tolvaneWith({
      'way/95': area('way/95', { golf: 'out_of_bounds' }, box(-300, -400, 300, 600), [box(-145, -245, 195, 405)]),
    });
    expect(codes(made)).toEqual([]);
    expect(surfaceAt(hole(made, '1'), [0, 100])).toBe('fairway');
    expect(surfaceAt(hole(made, '1'), [0, 406])).toBe('out');
  });

  test('an open line is said and puts nothing out; a course outline never does', () => {
    const made = tolvaneWith({ 'way/95': line('way/95', { golf: 'out_of_bounds' }, [110, 0], [110, 400]) });
    expect(codes(made)).toEqual(['open-boundary']);
    expect(hole(made, '1').areas.some((a) => a.surface === 'out')).toBe(false);
  });
});

describe('the flag asked for', () => {
  test('in paces from the front and the edge', () => {
    const placed = read(TOLVANE, { hole: '2', flag: { kind: 'paces', on: 8, in: 5, side: 'R' } }).value?.holes[0];
    expect(placed?.flagFrom).toBe('given');
    // Hole 2 plays a little east of south: 8 yd on from the north edge of a green 20 m deep, 5 yd in from its west edge.
    expect(placed?.flag.northM).toBeCloseTo(-140 - 8 * YARD_M, 0);
    expect(placed?.flag.eastM).toBeLessThan(5 - 11 + 5 * YARD_M + 1.2);
    expect(placed?.flag.eastM).toBeGreaterThan(5 - 11 + 5 * YARD_M - 1.2);
  });

  test('as a place, which finds its own hole', () => {
    const [lon, lat] = degrees([85, 185]);
    const { value } = read(TOLVANE, { flag: { kind: 'place', at: { lon, lat } } });
    expect(value?.holes.map((h) => h.flagFrom)).toEqual(['pin', 'given', 'pin']);
  });

  test('is refused off the green, swapped, or in paces without a hole', () => {
    const [lon, lat] = degrees([0, 100]);
    expect(codes(TOLVANE, { hole: '1', flag: { kind: 'place', at: { lon, lat } } })).toEqual(['flag-off-green']);
    expect(codes(TOLVANE, { flag: { kind: 'place', at: { lon: lat, lat: lon } } })).toEqual(['flag-off-green']);
    expect(codes(TOLVANE, { flag: { kind: 'paces', on: 3, in: 3, side: 'L' } })).toEqual(['flag-off-green']);
  });
});

test('a hole that is not there is refused with the names of those that are', () => {
  expect(read(TOLVANE, { hole: '7' })).toEqual({
    faults: [
      {
        code: 'no-such-hole',
        level: 'refused',
        file: 'tolvane.geojson',
        found: 'no hole 7',
        expected: 'one of 1, 2, 3',
      },
    ],
  });
});
