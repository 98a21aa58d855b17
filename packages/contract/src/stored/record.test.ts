import { expect, test } from 'vitest';
import { HOUSE } from './kinds.ts';
import { newRecord, readRecord } from './record.ts';

const OWNER = '7b1c9a52-4a8e-4f53-9b6e-0c4f0f8d1a01';
const ID = '3f0d7c8e-2b41-4d6a-8f2e-000000000001';
const header = { owner: OWNER, id: ID, madeAt: '2026-05-14T09:30:00+02:00' };
const profile = newRecord('profile', { ...header, body: { name: ' Tilda Brook ' } });
const note = newRecord('note', { ...header, body: { date: '2026-05-14', text: 'Aims right.' } });

test('a sound record comes back as it was sent, key for key', () => {
  expect(readRecord(profile)).toEqual({ value: profile, faults: [] });
});

test.each([
  ['an id that could hold a name', { ...profile, id: 'tilda' }, 'id'],
  ['an id in capitals, which would be another', { ...profile, id: ID.toUpperCase() }, 'id'],
  ['a key that is not known', { ...profile, colour: 'red' }, 'colour'],
  ['a time without a zone', { ...profile, madeAt: '2026-05-14T09:30:00' }, 'madeAt'],
  ['a profile of the house', { ...profile, owner: HOUSE }, 'owner'],
  ['a withdrawal of nothing', { ...profile, kind: 'withdrawal', body: {} }, 'supersedes'],
  ['a record that corrects itself', { ...note, supersedes: ID }, 'supersedes'],
  ['a body of another kind', { ...note, body: profile.body }, 'date'],
])('%s is refused', (_, record, at) => {
  const { value, faults } = readRecord(record);
  expect(value).toBeUndefined();
  expect(faults.map((fault) => fault.at)).toContain(at);
});

test('a note can be the house’s', () => {
  expect(readRecord({ ...note, owner: HOUSE }).faults).toEqual([]);
});
