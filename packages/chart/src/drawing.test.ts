import type { PlanePoint } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import type { ShownWind } from './charted.ts';
import { Drawing } from './drawing.ts';
import { LAYERS, type Scene } from './marks.ts';
import { scene } from './scene.ts';
import { svg } from './svg.ts';
import { SALT_HOLE } from './testdata/saltHole.ts';

const SIZE = { widthPx: 600, heightPx: 700 };
const field = (p: PlanePoint): number => 4 - 0.01 * p.northM;
const moved = { ...SALT_HOLE, flag: { eastM: 9, northM: 141 } };
const words = (s: Scene): string[] => s.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []));
const ofGround = (s: Scene) => s.marks.filter((m) => LAYERS.indexOf(m.layer) < LAYERS.indexOf('contours'));

describe('a drawing', () => {
  test('keeps a sheet where it is while the flag moves, with the same marks of the ground', () => {
    const drawing = new Drawing(SALT_HOLE, SIZE, 'yd');
    const before = drawing.scene({ ground: SALT_HOLE, choices: [], strokesAtRest: field });
    const after = drawing.scene({ ground: moved, choices: [], strokesAtRest: (p) => field(p) + 0.05 });
    expect(after.placing).toEqual(before.placing);
    expect([before.changedFrom, after.changedFrom]).toEqual(['tint', 'contours']);
    const [old, now] = [ofGround(before), ofGround(after)];
    expect(old.length).toBeGreaterThan(20);
    expect(now.every((m, i) => m === old[i])).toBe(true);
    expect(after.marks.slice(now.length)).not.toEqual(before.marks.slice(old.length));
  });

  test('draws what a fresh one draws, the first time and after', () => {
    const drawing = new Drawing(SALT_HOLE, SIZE, 'm');
    const charted = { ground: SALT_HOLE, choices: [], strokesAtRest: field };
    const fresh = svg(scene(charted, SIZE, 'm'));
    expect(svg(drawing.scene(charted))).toBe(fresh);
    drawing.scene({ ...charted, ground: moved });
    expect(svg(drawing.scene(charted))).toBe(fresh);
  });

  test('leaves out contours where the strokes are not known, and draws the others', () => {
    const lines = (strokesAtRest: typeof field) =>
      scene({ ground: SALT_HOLE, choices: [], strokesAtRest }, SIZE, 'yd')
        .marks.flatMap((m) => (m.kind === 'stroke' && m.strokes !== undefined ? m.lines.flat() : []))
        .toSorted((a, b) => a.y - b.y);
    const [all, half] = [lines(field), lines((p) => (p.northM > 90 ? NaN : field(p)))];
    expect(half.length).toBeGreaterThan(100);
    expect(half[0]?.y).toBeGreaterThan((all[0]?.y ?? 0) + 100);
    expect(half.at(-1)?.y).toBeCloseTo(all.at(-1)?.y ?? NaN, 6);
  });

  test('refuses another ground', () => {
    const drawing = new Drawing(SALT_HOLE, SIZE, 'yd');
    const other = { ...SALT_HOLE, areas: [...SALT_HOLE.areas] };
    expect(() => drawing.scene({ ground: other, choices: [] })).toThrow(RangeError);
  });

  test('of a shot that is not chosen yet shows ball, flag and ground, and no stroke of it', () => {
    const at = { eastM: 2, northM: 30 };
    const drawing = new Drawing(SALT_HOLE, SIZE, 'yd');
    drawing.scene({ ground: SALT_HOLE, choices: [], strokesAtRest: field });
    const told = drawing.scene({ ground: SALT_HOLE, choices: [], chooseFrom: { at, lie: 'rough' } });
    const layers = new Set(told.marks.map((m) => m.layer));
    for (const layer of ['contours', 'lines', 'pattern', 'arms'] as const) expect(layers.has(layer)).toBe(false);
    expect(words(told)).toEqual(expect.arrayContaining(['flag', 'ball, rough']));
    expect(words(told).join()).toContain('from the ball');
    // straight up to the flag
    const up = Math.atan2(SALT_HOLE.flag.eastM - at.eastM, SALT_HOLE.flag.northM - at.northM);
    expect(told.placing.upRad).toBeCloseTo(up, 9);
  });

  test('a phone’s sheet has no title block and no figures on the right', () => {
    const told = words(
      scene({ ground: SALT_HOLE, choices: [] }, { widthPx: 366, heightPx: 380 }, 'yd', { phone: true }),
    );
    expect(told).toContain('flag');
    expect(told.join()).not.toMatch(/Salt &|yards|to the flag/);
  });
});

describe('the rose', () => {
  const told = (wind: ShownWind, units: 'yd' | 'm') =>
    words(scene({ ground: SALT_HOLE, choices: [], wind }, SIZE, units));
  const wind: ShownWind = { speedMps: 4.0234, fromDeg: 240, known: 'felt' };

  test('tells the wind in whole units, and whence it is known', () => {
    expect(told(wind, 'yd')).toEqual(expect.arrayContaining(['9 mph', 'felt']));
    expect(told(wind, 'm')).toEqual(expect.arrayContaining(['4 m/s', 'felt']));
  });

  test('of a calm says so and draws no arrow', () => {
    const calm = scene({ ground: SALT_HOLE, choices: [], wind: { ...wind, speedMps: 0.1 } }, SIZE, 'yd');
    const blown = scene({ ground: SALT_HOLE, choices: [], wind }, SIZE, 'yd');
    expect(words(calm)).toContain('calm');
    const frameMarks = (s: Scene) => s.marks.filter((m) => m.layer === 'frame' && m.kind !== 'text').length;
    expect(frameMarks(blown) - frameMarks(calm)).toBe(6);
  });
});
