import { describe, expect, it } from 'vitest';
import { CALM, type Day, REFERENCE } from '../day/day.ts';
import type { BallState } from './solution.ts';
import { OpenHole, solveHole } from './solve.ts';
import { heightsOver } from '../ground/heights.ts';
import { referenceHole, referencePlayer, type PlayerName } from './testdata/load.ts';

const windy = (speedMps: number, fromDeg: number): Day => ({ ...REFERENCE, wind: { ...CALM, speedMps, fromDeg } });
const hole = referenceHole('t1_symmetric');
const tee: BallState = { at: hole.ball, lie: 'tee' };

function teeShot(day: Day, player: PlayerName = 'player_sym') {
  const solution = solveHole(hole, referencePlayer(player), day);
  const [best] = solution.best(tee);
  if (best === undefined) throw new Error('nothing to play');
  return { fast: best.strokes, ...solution.price(tee, best) };
}

describe('a hole in wind', () => {
  it('a symmetric hole in a mirrored wind has the mirrored plan', () => {
    const left = teeShot(windy(6, 300));
    const right = teeShot(windy(6, 60));
    expect(Math.abs(left.fast - right.fast)).toBeLessThan(0.003);
    expect(left.option.club).toBe(right.option.club);
    expect(Math.abs(left.finishes.eastM + right.finishes.eastM)).toBeLessThan(1.5);
    expect(Math.abs(left.finishes.northM - right.finishes.northM)).toBeLessThan(1.5);
  });

  it('a head wind costs strokes and a tail wind saves fewer, and more wind does more', () => {
    const calm = teeShot(REFERENCE).fast;
    const head = teeShot(windy(5, 0)).fast;
    const tail = teeShot(windy(5, 180)).fast;
    expect(head - calm).toBeGreaterThan(0.02);
    expect(teeShot(windy(8, 0)).fast).toBeGreaterThan(head);
    expect(calm - tail).toBeGreaterThan(0.01);
    expect(calm - tail).toBeLessThan(head - calm);
  });

  it('the player points into a cross wind, and the good strike comes back to about where it was', () => {
    const calm = teeShot(REFERENCE);
    const wind = teeShot(windy(6, 90));
    const aim = (hole.ball.eastM + 222 * Math.sin(wind.bearingRad)) | 0;
    expect(aim).toBeGreaterThan(8);
    expect(Math.abs(wind.finishes.eastM - calm.finishes.eastM)).toBeLessThan(4);
  });

  it('gusts cost a little more than the steady wind of their mean, by either rule, and are followed only into gusts', () => {
    const gusty = { ...windy(7, 20), wind: { ...windy(7, 20).wind, gustMps: 15 } };
    const [steady, spread] = [teeShot(windy(7, 20)), teeShot(gusty)];
    expect(spread.fast - steady.fast).toBeGreaterThan(0.003);
    expect(spread.fast - steady.fast).toBeLessThan(0.15);
    expect(Math.abs(spread.fast - spread.strokes)).toBeLessThan(0.004);
    expect(spread.pattern.parts).toHaveLength(steady.pattern.parts.length);
    expect(spread.pattern.parts[0]!.sdAlongM).toBeGreaterThan(steady.pattern.parts[0]!.sdAlongM);
    const open = new OpenHole(hole, referencePlayer('player_sym'), windy(7, 20));
    expect(open.follows(windy(3, 20))).toBe(true);
    expect(open.follows(gusty)).toBe(false);
  });

  it('the fast rule is within 0.004 of the price ball by ball', () => {
    for (const fromDeg of [20, 90, 200, 290]) {
      const { fast, strokes } = teeShot(windy(7, fromDeg));
      expect(Math.abs(fast - strokes)).toBeLessThan(0.004);
    }
  });

  it('a head wind never lowers the strokes from open ground', () => {
    const player = referencePlayer('player_sym');
    const calm = solveHole(hole, player);
    const head = solveHole(hole, player, windy(4, 0));
    for (const m of [60, 110, 150, 190, 230, 270]) {
      const from: BallState = { at: { eastM: hole.flag.eastM, northM: hole.flag.northM - m }, lie: 'fairway' };
      const [still] = calm.best(from);
      const [blown] = head.best(from);
      // the gaps of the bag lie elsewhere in wind: as many strokes as the saw-tooth of 0.02
      expect((blown?.strokes ?? NaN) - (still?.strokes ?? NaN)).toBeGreaterThan(-0.02);
    }
  });
});

describe('a hole on a slope', () => {
  const box = { westM: -200, eastM: 200, southM: -100, northM: 600 };
  const sloping = (perM: number) => ({ ...hole, heights: heightsOver(box, (p) => perM * p.northM, 'raster')! });
  const strokes = (perM: number): number => {
    const [best] = solveHole(sloping(perM), referencePlayer('player_sym')).best(tee);
    return best?.strokes ?? NaN;
  };

  it('is the level hole when its heights are all the same, and dearer the more it climbs', () => {
    const level = teeShot(REFERENCE).fast;
    expect(strokes(0)).toBe(level);
    const up = strokes(0.03);
    expect(up - level).toBeGreaterThan(0.02);
    expect(strokes(0.06)).toBeGreaterThan(up);
    expect(strokes(-0.03)).toBeLessThan(level);
  });
});
