import type { ListedPlayer, Profile } from '@leeway/contract';
import { expect, test } from 'vitest';
import { aboutWords, changedWords, dueWords, indexText, readIndex } from './words.ts';

const AT = '2026-05-14T09:30:00Z';
const DAY_MS = 86_400_000;

function listed(latest: ListedPlayer['latest'], body: Partial<Profile> = {}): ListedPlayer {
  const profile = { owner: 'o', id: 'i', kind: 'profile', version: 2, madeAt: AT } as const;
  return { profile: { ...profile, body: { name: 'Tilda Brook', ...body } }, latest };
}
const of = (kind: 'shot' | 'fitted' | 'note' | 'withdrawal', seq: number) => ({ kind, seq, at: AT });

test.each([
  ['no balls', listed([]), 'no carries yet'],
  ['claims alone', listed([], { clubs: [{ name: '7-iron', claimedCarryM: 140 }] }), 'carries typed, none measured'],
  ['shots newer than the fit', listed([of('shot', 9), of('fitted', 4)]), 'new shots to fit'],
  ['all fitted', listed([of('fitted', 9), of('shot', 4)]), ''],
  ['sore', listed([of('shot', 9)], { sparedSince: '2026-05-13' }), 'not today, since 13 May 2026'],
])('what is due: %s', (_, player, words) => {
  expect(dueWords(player, Date.parse(AT))).toBe(words);
});

test('old carries are due again', () => {
  const player = listed([of('fitted', 9), of('shot', 4)]);
  expect(dueWords(player, Date.parse(AT) + 90.5 * DAY_MS)).toBe('');
  expect(dueWords(player, Date.parse(AT) + 120 * DAY_MS)).toBe('carries are 4 months old');
});

test('what changed last is the newest thing that a coach knows by name', () => {
  expect(changedWords(listed([of('withdrawal', 12), of('note', 11), of('shot', 4)]))).toBe('a note, 14 May 2026');
});

test.each([
  ['17,2', 17.2],
  [' 8 ', 8],
  ['+1.4', -1.4],
  ['−2', -2],
  ['54', 54],
  ['54.1', undefined],
  ['+10.1', undefined],
  ['scratch', undefined],
  ['', undefined],
])('an index written %j is %s', (text, index) => {
  expect(readIndex(text)).toBe(index);
});

test('an index is read back as it is shown', () => {
  for (const index of [-10, -1.4, 0, 17.2, 54]) expect(readIndex(indexText(index))).toBe(index);
});

test('who a player is in a line', () => {
  expect(aboutWords({ name: 'Jory', minor: true, hand: 'left' })).toBe('under age, plays left-handed');
  expect(aboutWords({ name: 'Tilda', handicapIndex: -1.4 })).toBe('index +1.4');
});
