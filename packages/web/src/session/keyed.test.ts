import { describe, expect, it } from 'vitest';
import { ballKeyed, figuresOf, keyedAt, NOTHING_KEYED, withFigure } from './keyed.ts';
import { sessionOf, type SetUp, windMps } from './log.ts';

const keyed = (carry: string, side = '', hand: 'left' | 'right' = 'right') => ballKeyed({ carry, side, hand }, 'yd');

describe('a ball that is keyed', () => {
  it('is metres, left negative, its side unknown when nothing was keyed', () => {
    expect(keyed('150', '10', 'left')).toEqual({ carryM: 137.16, sideM: -9.144 });
    expect(keyed('150', '0')).toEqual({ carryM: 137.16, sideM: 0 });
    expect(keyed('150')).toEqual({ carryM: 137.16 });
    expect(ballKeyed({ carry: '137', side: '9', hand: 'right' }, 'm')).toEqual({ carryM: 137, sideM: 9 });
  });

  it('is none without a carry, or further to the side than it flew', () => {
    expect(ballKeyed(NOTHING_KEYED, 'yd')).toBe('no carry');
    expect(keyed('0')).toBe('no carry');
    expect(keyed('999')).toBe('no carry');
    expect(keyed('40', '41')).toBe('no side');
  });

  it('takes three figures at most, and no letters', () => {
    expect(['1', '8', '6', '6'].reduce(withFigure, '')).toBe('186');
    expect(withFigure('0', '7')).toBe('7');
    expect(figuresOf('1a86o5')).toBe('186');
  });

  it('can be tapped: 3, 4 and 5', () => {
    expect(keyedAt(40, -30, 1)).toEqual({ carry: '50', side: '30', hand: 'left' });
  });
});

describe('how a session is kept', () => {
  const setUp: SetUp = {
    target: ' white post ',
    surface: 'mat',
    ball: 'range',
    wind: 'left',
    speed: '10',
    options: [],
    most: 60,
  };

  it('tells the wind from the line, in metres a second', () => {
    expect(sessionOf(setUp, '2026-05-14', 'yd')).toEqual({
      date: '2026-05-14',
      purpose: 'gapping',
      ball: 'range',
      surface: 'mat',
      target: 'white post',
      lineWind: { speedMps: 4.4704, fromDeg: 270 },
    });
    expect(sessionOf({ ...setUp, wind: 'calm', speed: '' }, '2026-05-14', 'm').lineWind?.speedMps).toBe(0);
    expect(windMps({ wind: 'into', speed: 'brisk' }, 'yd')).toBeUndefined();
  });
});
