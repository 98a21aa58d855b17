import { describe, expect, it } from 'vitest';
import { approachOf, type TypedApproach } from './approachTyped.ts';

const TYPED: TypedApproach = {
  club: '7-iron',
  swing: 'full',
  flag: '143',
  front: '130',
  back: '158',
  width: '24',
  end: 'mark',
  beyond: '5',
  depth: 'short',
  across: '3',
  hand: 'left',
};
const read = (more: Partial<TypedApproach>) => approachOf({ ...TYPED, ...more }, '2026-05-14', 'm');

describe('an approach that is typed', () => {
  it('is kept in metres from the flag, short and left negative', () => {
    expect(read({})).toEqual({
      date: '2026-05-14',
      club: '7-iron',
      swing: 'full',
      toFlagM: 143,
      green: { frontM: 130, backM: 158, leftM: 12, rightM: 12 },
      found: { beyondFlagM: -5, rightOfFlagM: -3 },
    });
    expect(read({ beyond: '', across: '0' })).toMatchObject({ found: { beyondFlagM: 0, rightOfFlagM: 0 } });
    expect(read({ end: 'away' })).toMatchObject({ found: { missed: 'away' } });
  });

  it('is none with a flag off the green, a green that ends before it begins, or a mark beside it', () => {
    expect(read({ club: '' })).toBe('club');
    expect(read({ flag: 'far' })).toBe('flag');
    expect(read({ front: '150' })).toBe('green');
    expect(read({ back: '140' })).toBe('green');
    expect(read({ width: '' })).toBe('green');
    expect(read({ beyond: '20' })).toBe('mark');
    expect(read({ across: '13' })).toBe('mark');
  });
});
