import { type Charted, groundAt, scene, type Stroke } from '@leeway/chart';
import type { PlanePoint } from '@leeway/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { holeAnswer } from './answers.ts';
import { chartedBefore, chartedOf } from './charted.ts';
import { type OpenHole, solveRead } from './openHole.ts';
import { readHole } from './readHole.ts';
import { prepare, type Prepared, readPrepared, writePrepared } from './prepared.ts';
import { GROUND, INA, sending } from './testdata/tried.ts';

const ask = { ground: GROUND, hole: '5', player: INA, units: 'yd' } as const;
const AT_ONCE = { pause: () => Promise.resolve() };

describe('a hole worked out beforehand', () => {
  let open: OpenHole;
  let prepared: Prepared;
  beforeAll(async () => {
    open = await solveRead(await readHole(ask, sending()), AT_ONCE);
    prepared = readPrepared(JSON.parse(writePrepared(prepare(open))));
  }, 120_000);

  test('answers as the solved hole does, in either unit', () => {
    for (const units of ['yd', 'm'] as const) {
      const solved = holeAnswer({ ...open, ask: { ...ask, units } });
      expect(prepared.answers[units]).toEqual({ ...JSON.parse(JSON.stringify(solved)), prepared: true });
    }
  });

  test('keeps the maps in its choices', () => {
    expect(prepared.choices.map((c) => c.answer.priced.areaChances)).toEqual(
      open.plan.shots.map(({ choice }) => choice.answer.priced.areaChances),
    );
  });

  test('draws the same marks as the solved hole but for the contours, along which it has the same strokes', () => {
    const before = chartedBefore(open, prepared);
    const solved = chartedOf(open);
    for (const shot of open.plan.shots.keys()) {
      const [a, b] = [before, solved].map((charted) => drawn(charted, shot));
      expect(marksBut('contours', a)).toEqual(marksBut('contours', b));
      const from = open.plan.shots[shot]?.choice.from;
      if (from === undefined || a === undefined) continue;
      const strokes = (of: Charted, at: PlanePoint): number => of.strokesAtRest?.(at, from) ?? NaN;
      const off = contourPlaces(a).map((at) => Math.abs(strokes(before, at) - strokes(solved, at)));
      off.sort((x, y) => x - y);
      expect(off.length).toBeGreaterThan(200);
      expect(off[Math.floor(off.length / 2)]).toBeLessThan(0.002);
      expect(off[Math.floor(off.length * 0.95)]).toBeLessThan(0.02);
    }
  });
});

type Drawn = ReturnType<typeof scene>;

const drawn = (charted: Charted, shot: number): Drawn =>
  scene({ ...charted, shot }, { widthPx: 690, heightPx: 768 }, 'yd');

/** Marks of all layers but one; figures in the contours move with them, and so may the names that keep clear of these. */
const marksBut = (layer: string, of: Drawn | undefined) =>
  of?.marks.filter((m) => m.layer !== layer && m.layer !== 'names' && m.kind !== 'text');

const contourPlaces = ({ marks, placing }: Drawn): PlanePoint[] =>
  marks
    .filter((m): m is Stroke => m.kind === 'stroke' && m.strokes !== undefined)
    .flatMap(({ lines }) => lines.flatMap((l) => l.map((q) => groundAt(placing, q))));
