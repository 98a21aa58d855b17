import { YARD_M } from '@leeway/engine';
import { expect, test } from 'vitest';
import { holeLine, neverWords, shortOption, zoneWords } from './holeLine.ts';
import type { HoleDocument, ShotDocument } from './plan.ts';

test.each([
  ['Driver', 'full', 'D'],
  ['3 wood', 'full', '3W'],
  ['4-hybrid', 'full', '4H'],
  ['8I', 'full', '8i'],
  ['7-iron', 'three-quarter', '7i ¾'],
  ['pw', 'half', 'PW ½'],
  ['54', 'full', '54°'],
  ['SW', 'pitch 26 yd', 'SW pitch'],
  ['Old Faithful', 'punch', 'Old Faithful punch'],
])('%s, %s is written %s', (club, swing, short) => {
  expect(shortOption({ club, swing })).toBe(short);
});

test('a zone is told by what is off the middle', () => {
  expect(zoneWords({ depth: 'middle', side: 'middle' })).toBe('middle');
  expect(zoneWords({ depth: 'front', side: 'left' })).toBe('front left');
  expect(zoneWords({ depth: 'back', side: 'middle' })).toBe('back');
  expect(zoneWords({ depth: 'middle', side: 'right' })).toBe('right');
});

const yd = (n: number | null): number | null => (n === null ? null : n * YARD_M);
const room = (left: number | null, right: number | null, short: number | null, long: number | null) => [
  { more: 0.1, leftM: 1, rightM: 1, shortM: 1, longM: 1 },
  { more: 0.25, leftM: yd(left), rightM: yd(right), shortM: yd(short), longM: yd(long) },
];

test.each([
  [room(22, 14, 30, 30), 'never right'],
  [room(20, 14, 30, 30), undefined],
  [room(40, 16, 30, 30), undefined],
  [room(null, 14, 40, 9), 'never long'],
  [room(null, null, null, null), undefined],
])('the side that is never to be missed on, %#', (arms, words) => {
  expect(neverWords({ room: arms })).toBe(words);
});

test('a hole is one line', () => {
  const spot = { lon: 0, lat: 0, beyondFlagM: -143 * YARD_M, rightOfFlagM: 0 };
  const tee = {
    option: { club: '3-wood', swing: 'full' },
    startLine: 'the right edge of the left bunker',
    finishesM: 210 * YARD_M,
    spot,
    room: room(44, 26, 50, 79),
  } as unknown as ShotDocument;
  const approach = {
    option: { club: '8-iron', swing: 'full' },
    startLine: '2 yd right of the back bunker',
    room: room(22, 14, 17, 19),
  } as unknown as ShotDocument;
  const hole = (shots: ShotDocument[]): HoleDocument => ({ shots }) as unknown as HoleDocument;
  const middle = { depth: 'middle', side: 'middle' } as const;
  expect(holeLine(hole([tee, approach]), [undefined, middle], 'yd')).toBe(
    '3W at right edge of left bunker · 8i middle · never right',
  );
  const { startLine: _, ...open } = tee;
  expect(holeLine(hole([open as ShotDocument, approach]), [undefined, middle], 'yd')).toBe(
    '3W 210 out, leaves 143 · 8i middle · never right',
  );
  expect(holeLine(hole([{ ...tee, startLine: '10 yd left of the right bunkers' }]), [], 'yd')).toBe(
    '3W 10 left of right bunkers',
  );
});
