import { describe, expect, it } from 'vitest';
import { nextCall, type Option } from './calls.ts';

const full = (club: string): Option => ({ club, swing: 'full' });
const ORDER = [
  { ...full('PW'), balls: 3 },
  { ...full('7-iron'), balls: 2 },
  { ...full('PW'), balls: 1 },
  { ...full('7-iron'), balls: 1 },
];
const none = (): boolean => false;

/** The clubs as they are called, each hit in turn. */
function hitAll(enough: (o: Option) => boolean = none): readonly string[] {
  const hit: Option[] = [];
  for (let call = nextCall(ORDER, hit, enough); call !== undefined; call = nextCall(ORDER, hit, enough))
    hit.push(full(call.club));
  return hit.map(({ club }) => club);
}

describe('the calls of a session', () => {
  it('follow the order, ball by ball, and say where in a block they are', () => {
    expect(hitAll()).toEqual(['PW', 'PW', 'PW', '7-iron', '7-iron', 'PW', '7-iron']);
    expect(nextCall(ORDER, [full('PW')], none)).toEqual({ ...full('PW'), inBlock: { ball: 2, of: 3 } });
    expect(nextCall(ORDER, hitAll().slice(0, 5).map(full), none)).toEqual(full('PW'));
  });

  it('come again when a ball is undone, and not when it was hit before its time', () => {
    expect(nextCall(ORDER, ['PW', 'PW', '7-iron'].map(full), none)?.inBlock).toEqual({ ball: 3, of: 3 });
    expect(nextCall(ORDER, ['PW', 'PW', '7-iron', 'PW'].map(full), none)).toEqual({
      ...full('7-iron'),
      inBlock: { ball: 2, of: 2 },
    });
    expect(nextCall(ORDER, [full('driver')], none)?.club).toBe('PW');
  });

  it('leave out what is known well enough', () => {
    expect(hitAll((o) => o.club === 'PW')).toEqual(['7-iron', '7-iron', '7-iron']);
    expect(hitAll(() => true)).toEqual([]);
  });
});
