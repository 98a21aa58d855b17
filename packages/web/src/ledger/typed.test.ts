import { frameAt, distanceM, type HoleGround } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { placedHole, surfaceAt } from './guessed.ts';
import { keysOf, readTyped, scoreOf } from './typed.ts';

const BAG = [
  { name: 'driver', family: 'driver' },
  { name: '5-wood', family: 'wood', number: 5 },
  { name: '5-hybrid', family: 'hybrid', number: 5 },
  { name: '7-iron', family: 'iron', number: 7 },
  { name: 'PW', family: 'wedge' },
  { name: '54°', family: 'wedge' },
];
const KEYS = keysOf(BAG);

describe('a hole by its keys', () => {
  it('every club has one key, irons by their numbers', () => {
    expect([...KEYS]).toEqual([
      ['d', 'driver'],
      ['7', '7-iron'],
      ['5', '5-hybrid'],
      ['p', 'PW'],
      ['a', '54°'],
      ['u', '5-wood'],
    ]);
  });

  it('reads finishes, clubs where they are typed, sides and putts', () => {
    expect(readTyped('fg2', KEYS)).toEqual({ strokes: [{ to: 'f' }, { to: 'g' }], putts: 2, whole: true });
    expect(readTyped('5r, 7w g-1', KEYS)).toEqual({
      strokes: [
        { club: '5-hybrid', to: 'r', side: 'left' },
        { club: '7-iron', to: 'w' },
        { to: 'g', side: 'short' },
      ],
      putts: 1,
      whole: true,
    });
    expect(readTyped('h', KEYS).whole).toBe(true);
    expect(readTyped('fg', KEYS).whole).toBe(false);
  });

  it.each([
    ['fq', 'q'],
    ['fg2g', 'g'],
    ['fg0', '0'],
    ['77f', '7'],
    [',f', ','],
    ['4f', '4'],
  ])('%s is wrong at %s', (text, wrong) => {
    expect(readTyped(text, KEYS).wrong).toBe(wrong);
  });

  it('counts penalties', () => {
    expect(['fg2', 'wfg2', 'ofrg1', 'h'].map((text) => scoreOf(readTyped(text, KEYS)))).toEqual([4, 6, 6, 1]);
  });
});

const box = (left: number, right: number, low: number, high: number) => ({
  outer: [
    { eastM: left, northM: low },
    { eastM: right, northM: low },
    { eastM: right, northM: high },
    { eastM: left, northM: high },
  ],
  inner: [],
});
const flag = { eastM: 0, northM: 340 };
const ground = {
  hole: '1',
  par: 4,
  frame: frameAt({ lon: 0, lat: 50 }),
  ball: { eastM: 0, northM: 0 },
  flag,
  line: [{ eastM: 0, northM: 0 }, flag],
  areas: [
    { surface: 'fairway', polygon: box(-15, 15, 150, 320) },
    { surface: 'green', polygon: box(-12, 12, 325, 355) },
    { surface: 'bunker', polygon: box(14, 20, 330, 350) },
    { surface: 'penalty', polygon: box(-60, 60, 260, 275) },
  ],
} as unknown as HoleGround;
const reaches = [
  { club: 'driver', toM: 200 },
  { club: '7-iron', toM: 128 },
  { club: 'PW', toM: 98 },
];
const placed = (text: string) => placedHole(ground, readTyped(text, KEYS), reaches);

describe('guessed places', () => {
  it('a fairway, a green and two putts: driver, the iron that reaches, every finish on its ground', () => {
    const [tee, iron, first, last, ...more] = placed('fg2');
    expect([tee!.club, iron!.club, first!.club, more]).toEqual(['driver', '7-iron', undefined, []]);
    expect(surfaceAt(ground, tee!.finish as never)).toBe('fairway');
    expect(distanceM(ground.ball, tee!.finish as never)).toBeCloseTo(200, 6);
    expect(surfaceAt(ground, iron!.finish as never)).toBe('green');
    expect(distanceM(iron!.finish as never, flag)).toBeGreaterThan(5);
    expect([iron!.from, first!.from, last!.finish]).toEqual([tee!.finish, iron!.finish, 'holed']);
  });

  it('sand is the bunker, and a side is kept to', () => {
    const [, iron, chip] = placed('fsg1');
    expect(surfaceAt(ground, iron!.finish as never)).toBe('bunker');
    expect([chip!.lie, chip!.club]).toEqual(['bunker', undefined]);
    const [left] = placed('r,');
    expect((left!.finish as { eastM: number }).eastM).toBeLessThan(-14);
  });

  it('water is dropped short of, with a penalty; a ball out is played again from where it was', () => {
    const [tee, water, dropped] = placed('fpwg2');
    expect([water!.penaltyStrokes, surfaceAt(ground, water!.finish as never)]).toEqual([1, 'penalty']);
    expect(dropped!.from.northM).toBeLessThan(260);
    expect(dropped!.from.northM).toBeGreaterThan((tee!.finish as { northM: number }).northM);
    const [, again] = placed('og2');
    expect(again!.from).toEqual(ground.ball);
    expect(again!.lie).toBe('tee');
  });
});
