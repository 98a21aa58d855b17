import type { Shelf } from '@leeway/contract';
import { expect, test } from 'vitest';
import { openOn } from './holes.ts';
import { ownOnly } from './own.ts';

const ID = '3f0d7c8e-2b41-4d6a-8f2e-000000000001';
const holes = [{ hole: '1', par: 4, url: '/h' }];
const MADE_UP: Shelf = {
  grounds: [{ id: '0123456789abcdef', course: 'The links', holes, prepared: [] }],
  players: [{ id: 'fedcba9876543210', name: 'Ina', url: '/api/files/fedcba9876543210', ballUrls: [] }],
  opening: { ground: '0123456789abcdef', hole: '1', player: 'fedcba9876543210' },
};
const OWN: Shelf = {
  ...MADE_UP,
  grounds: [{ id: ID, course: 'Rill Meadow', kept: true, holes, prepared: [] }, ...MADE_UP.grounds],
  players: [{ id: ID, name: 'Jory', url: `/api/players/${ID}/file`, ballUrls: [] }, ...MADE_UP.players],
};

test('a clean start leaves only what is kept, and opens on it', () => {
  expect(openOn(ownOnly(OWN), {})).toMatchObject({
    ground: { course: 'Rill Meadow' },
    hole: '1',
    player: { name: 'Jory' },
  });
});

test('a clean start with nothing kept has nothing to open', () => {
  expect(openOn(ownOnly(MADE_UP), {})).toBeUndefined();
  expect(openOn(MADE_UP, {})).toBeDefined();
});
