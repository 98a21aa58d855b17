import { HOUSE } from '@leeway/contract';
import { MADE_AT, newId } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApi, OWN, type TestApi } from '../testdata/testApi.ts';

let api: TestApi;
beforeAll(async () => {
  api = await openTestApi();
}, 60_000);
afterAll(() => api.close());

const record = (body: object, supersedes?: string) => ({
  id: newId(),
  madeAt: MADE_AT,
  ...(supersedes === undefined ? {} : { supersedes }),
  body,
});

async function newPlayer(
  body: object = { name: 'Tilda Brook' },
): Promise<{ readonly player: string; readonly profile: string }> {
  const player = newId();
  const sent = record(body);
  const { status } = await api.ask('POST', `/api/players/${player}/profiles`, { records: [sent] });
  expect(status).toBe(200);
  return { player, profile: sent.id };
}

test('a player is added, listed with what changed, edited, archived, and noted on', async () => {
  const { player, profile } = await newPlayer();
  const edit = record({ name: 'Tilda Brook', archived: true, handicapIndex: 17.2 }, profile);
  expect((await api.ask('POST', `/api/players/${player}/profiles`, { records: [edit] })).status).toBe(200);
  const note = record({ date: '2026-05-14', text: 'Aims right.' });
  expect((await api.ask('POST', `/api/players/${player}/notes`, { records: [note] })).status).toBe(200);
  const listed = await api.ask('GET', '/api/players');
  const [one] = (
    listed.json as { players: { profile: { owner: string; body: object }; latest: { kind: string }[] }[] }
  ).players.filter(({ profile: { owner } }) => owner === player);
  expect(one?.profile.body).toEqual(edit.body);
  expect(one?.latest.map(({ kind }) => kind)).toEqual(['note', 'profile']);
  const history = await api.ask('GET', `/api/players/${player}/profiles/${profile}`);
  expect(history.json).toMatchObject({ records: [{ id: profile }, { id: edit.id }] });
  const standing = await api.ask('GET', `/api/players/${player}/profiles`);
  expect(standing.json).toMatchObject({ records: [{ id: edit.id }] });
});

test('the same record again is harmless, other content under its id is refused', async () => {
  const { player } = await newPlayer();
  const note = record({ date: '2026-05-14', text: 'One.' });
  const url = `/api/players/${player}/notes`;
  expect((await api.ask('POST', url, { records: [note] })).json).toMatchObject({ receipts: [{ outcome: 'stored' }] });
  expect((await api.ask('POST', url, { records: [note] })).json).toMatchObject({ receipts: [{ outcome: 'already' }] });
  const other = { ...note, body: { date: '2026-05-14', text: 'Two.' } };
  expect(await api.ask('POST', url, { records: [other] })).toMatchObject({
    status: 409,
    json: { faults: [{ code: 'taken' }] },
  });
});

test('a request that is not as the contract says is refused with its place', async () => {
  const { player } = await newPlayer();
  const bad = record({ name: 'Kim', handicapIndex: 99 });
  expect(await api.ask('POST', `/api/players/${player}/profiles`, { records: [bad] })).toMatchObject({
    status: 400,
    json: {
      faults: [{ code: 'out-of-range', at: 'records[0].body.handicapIndex', found: '99', expected: 'at most 54' }],
    },
  });
  expect((await api.ask('POST', `/api/players/${player}/profiles`, { records: [], extra: 1 })).status).toBe(400);
  expect((await api.ask('GET', '/api/players/kim/notes')).status).toBe(400);
  expect((await api.ask('GET', `/api/players/${HOUSE}/notes`)).status).toBe(400);
  expect((await api.ask('GET', `/api/players/${player}/notes?most=0`)).status).toBe(400);
  expect((await api.ask('GET', `/api/players/${newId()}/ladder`)).status).toBe(404);
  expect((await api.ask('GET', '/api/nothing')).status).toBe(404);
});

test('sessions and shots come back as the ladder’s balls, and leave as a table without formulas', async () => {
  const { player } = await newPlayer();
  const session = record({ date: '2026-05-14', purpose: 'range' });
  await api.ask('POST', `/api/players/${player}/sessions`, { records: [session] });
  const shots = [
    record({ session: session.id, club: '=cmd()', swing: 'full', carryM: 131.4, sideM: -2.5 }),
    record({ session: session.id, club: '7-iron', swing: '@half', carryM: 80 }),
  ];
  expect((await api.ask('POST', `/api/players/${player}/shots`, { records: shots })).status).toBe(200);
  expect((await api.ask('GET', `/api/players/${player}/ladder`)).json).toMatchObject({
    fitted: null,
    balls: [{ date: '2026-05-14', club: '=cmd()', carryM: 131.4, sideM: -2.5 }, { swing: '@half' }],
  });
  const csv = await api.app.inject({ url: `/api/players/${player}/shots.csv`, headers: OWN });
  expect(csv.body.split('\r\n')).toEqual([
    'date,club,swing,carry (m),side (m)',
    `2026-05-14,'=cmd(),full,131.4,-2.5`,
    `2026-05-14,7-iron,'@half,80,`,
    '',
  ]);
});

test('courses and set-ups are the house’s, listed without their ground', async () => {
  const course = record({ name: 'The made-up links', ground: { file: 'links.geojson', text: '{}' } });
  await api.ask('POST', '/api/house/courses', { records: [course] });
  const setUp = record({ course: course.id, date: '2026-05-16', flags: [], firmness: 'firm' });
  expect((await api.ask('POST', '/api/house/set-ups', { records: [setUp] })).status).toBe(200);
  const listed = await api.ask('GET', '/api/courses');
  expect(listed.json).toMatchObject({ courses: [{ id: course.id, name: 'The made-up links', file: 'links.geojson' }] });
  expect(JSON.stringify(listed.json)).not.toContain('text');
});

test('a record leaves as a file, comes in again, and an erased one never does', async () => {
  const name = 'Quirina Vandersnoot';
  const { player } = await newPlayer({ name });
  const url = `/api/players/${player}/record`;
  const file = Buffer.from((await api.app.inject({ url, headers: OWN })).body);
  expect((await api.ask('POST', '/api/players/records', file)).json).toMatchObject({
    receipts: [{ outcome: 'already' }],
  });
  const erasure = `/api/players/${player}/erasure`;
  expect((await api.ask('POST', erasure, { name: 'Quirina' })).status).toBe(409);
  expect((await api.ask('POST', erasure, { name })).json).toEqual({ records: 1, jobs: 0, unreached: [] });
  expect(await api.ask('POST', '/api/players/records', file)).toMatchObject({ status: 410 });
  expect((await api.ask('GET', url)).status).toBe(404);
  const changes = await api.ask('GET', `/api/changes?after=0&owners=${player}`);
  expect(changes.json).toMatchObject({ store: api.store.id, records: [], erased: [player], more: false });
});

test('a backup is written into its folder', async () => {
  await newPlayer();
  const { status, json } = await api.ask('POST', '/api/backups');
  expect(status).toBe(200);
  expect((json as { records: number }).records).toBeGreaterThan(0);
});

test('the API is described by one document and one plain page, made from its routes', async () => {
  const sent = await api.app.inject({ url: '/api/openapi.json', headers: OWN });
  const { openapi, paths } = sent.json<{
    openapi: string;
    paths: Record<string, Record<string, { requestBody?: object }>>;
  }>();
  expect(openapi).toBe('3.1.0');
  expect(Object.keys(paths)).toEqual(
    expect.arrayContaining(['/api/players', '/api/players/{player}/ladder', '/api/house/set-ups']),
  );
  expect(JSON.stringify(paths['/api/players/{player}/profiles']?.['post']?.requestBody)).toContain('handicapIndex');
  const page = await api.app.inject({ url: '/api', headers: OWN });
  expect(page.headers['content-type']).toContain('text/html');
  expect(page.body).toContain('/api/players/{player}/ladder');
  expect(page.body).not.toMatch(/<script|<style|style=|\son\w+=|https?:/);
});
