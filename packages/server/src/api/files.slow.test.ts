import { readFileSync } from 'node:fs';
import { type GroundFilePreview, receivedHole, type ShotFile, shelfSchema } from '@leeway/contract';
import { readGround } from '@leeway/formats';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import { current } from '@leeway/store';
import { MADE_AT, newId } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApi, OWN, type TestApi } from '../testdata/testApi.ts';

let api: TestApi;
beforeAll(async () => {
  api = await openTestApi();
}, 60_000);
afterAll(() => api.close());

const bytes = (text: string): Uint8Array => Buffer.from(text);

async function newPlayer(name = 'Tilda Brook'): Promise<string> {
  const player = newId();
  const records = [{ id: newId(), madeAt: MADE_AT, body: { name } }];
  expect((await api.ask('POST', `/api/players/${player}/profiles`, { records })).status).toBe(200);
  return player;
}

async function send(
  player: string,
  file: Uint8Array,
  said: Readonly<Record<string, string>> = {},
): Promise<{ status: number; json: ShotFile }> {
  const query = new URLSearchParams({ name: 'may.csv', date: '2026-05-14', ...said });
  return api.ask('POST', `/api/players/${player}/shot-files?${query.toString()}`, file);
}

const ODD = 'Stick,Flug,Dev.,Heft\n7-iron,131.4,2.5 L,1\n7-iron,odd,1 R,2\n8-iron,120,900 R,3\n8-iron,121.5,0,4\n';
const MEANINGS = ['club', 'carry', 'side', 'ignore'];
const ODD_READING = JSON.stringify({ units: 'm', meanings: MEANINGS });

test('a file with odd headings is mapped, seen row by row, approved, and its mapping remembered', async () => {
  const player = await newPlayer();
  const bare = await send(player, bytes(ODD));
  expect(bare.status).toBe(200);
  expect(bare.json.headings.map(({ text, meaning }) => [text, meaning])).toEqual([
    ['Stick', null],
    ['Flug', null],
    ['Dev.', null],
    ['Heft', null],
  ]);
  expect(bare.json).toMatchObject({ sessions: [], first: [], remembered: false, faults: [{ code: 'no-headings' }] });

  const mapped = (await send(player, bytes(ODD), { reading: ODD_READING })).json;
  expect(mapped.first).toEqual([
    { line: 2, cells: ['7-iron', '131.4', '2.5 L', '1'], club: '7-iron', swing: 'full', carryM: 131.4, sideM: -2.5 },
    { line: 5, cells: ['8-iron', '121.5', '0', '4'], club: '8-iron', swing: 'full', carryM: 121.5, sideM: 0 },
  ]);
  expect(mapped.sessions).toMatchObject([{ date: '2026-05-14', shots: 2 }]);
  const rows = mapped.faults.filter(({ level }) => level === 'left out').map(({ code, line }) => [code, line]);
  expect(rows).toEqual([
    ['carry', 3],
    ['side-range', 4],
  ]);
  expect(await current(api.store, { owner: player, kind: 'shot' })).toEqual([]);

  const kept = await send(player, bytes(ODD), { reading: ODD_READING, approve: mapped.seen });
  expect(kept.json.kept).toEqual({ sessions: 1, shots: 2, already: false });
  const [shot] = await current(api.store, { owner: player, kind: 'shot' });
  expect(shot?.body).toEqual({
    session: mapped.sessions[0]?.id,
    club: '7-iron',
    swing: 'full',
    carryM: 131.4,
    sideM: -2.5,
    raw: { line: 2, cells: ['7-iron', '131.4', '2.5 L', '1'] },
  });
  const [session] = await current(api.store, { owner: player, kind: 'session' });
  expect(session?.body.source).toEqual({
    file: 'may.csv',
    headings: ['Stick', 'Flug', 'Dev.', 'Heft'],
    meanings: MEANINGS,
    units: 'm',
  });

  const again = await send(player, bytes(ODD), { reading: ODD_READING, approve: mapped.seen });
  expect(again.json.kept).toEqual({ sessions: 0, shots: 0, already: true });
  const remembered = (await send(player, bytes(ODD))).json;
  expect(remembered.sessions.map(({ id }) => id)).toEqual(mapped.sessions.map(({ id }) => id));
  const inYards = (await send(player, bytes(ODD), { reading: ODD_READING.replace('"m"', '"yd"') })).json;
  expect(inYards.faults.map(({ code }) => code)).toContain('session-known');
  expect(await current(api.store, { owner: player, kind: 'shot' })).toHaveLength(2);

  const takenBack = { id: newId(), madeAt: MADE_AT, supersedes: mapped.sessions[0]?.id, body: {} };
  await api.ask('POST', `/api/players/${player}/withdrawals`, { records: [takenBack] });
  expect((await api.ask('GET', `/api/players/${player}/ladder`)).json).toMatchObject({ balls: [] });
  const anew = (await send(player, bytes(ODD), { reading: ODD_READING })).json;
  expect((await send(player, bytes(ODD), { reading: ODD_READING, approve: anew.seen })).json.kept).toMatchObject({
    shots: 2,
    already: false,
  });
  expect((await api.ask('GET', `/api/players/${player}/ladder`)).json).toMatchObject({
    balls: [{ carryM: 131.4 }, { carryM: 121.5 }],
  });

  const other = await newPlayer('Kim Aster');
  const june = (await send(other, bytes(ODD.replaceAll('7-iron', '6-iron')))).json;
  expect(june).toMatchObject({
    remembered: true,
    reading: { units: 'm', meanings: MEANINGS },
    sessions: [{ shots: 2 }],
  });
});

test('what was not looked at is not kept', async () => {
  const player = await newPlayer('Wren Lyle');
  const { seen } = (await send(player, bytes(ODD), { reading: ODD_READING })).json;
  for (const [file, said] of [
    [bytes(ODD.replace('131.4', '141.4')), { reading: ODD_READING }],
    [bytes(ODD), { reading: ODD_READING.replace('"m"', '"yd"') }],
    [bytes(ODD), { reading: ODD_READING, date: '2026-05-15' }],
  ] as const)
    expect(await send(player, file, { ...said, approve: seen })).toMatchObject({
      status: 400,
      json: { faults: [{ code: 'not-as-seen' }] },
    });
  const unmapped = (await send(player, bytes('Stick,Weite\n7-iron,120\n'))).json;
  expect(unmapped.sessions).toEqual([]);
  expect((await send(player, bytes('Stick,Weite\n7-iron,120\n'), { approve: unmapped.seen })).status).toBe(400);
  expect(await current(api.store, { owner: player, kind: 'shot' })).toEqual([]);
  expect((await send(player, bytes(ODD), { reading: '{"units":"ell"}' })).status).toBe(400);
});

test('several days make several sessions, several players need a name', async () => {
  const player = await newPlayer('Perrin Vale');
  const text =
    'club,carry (m),date,player\n7-iron,130,2026-05-02 10:00,Perrin\n7-iron,131,2026-05-01,perrin\n7-iron,99,2026-05-02,Otho\n';
  const both = (await send(player, bytes(text))).json;
  expect(both).toMatchObject({ players: ['Perrin', 'Otho'], sessions: [] });
  const reading = JSON.stringify({ units: 'm', of: 'Perrin' });
  const one = (await send(player, bytes(text), { reading })).json;
  expect(one.sessions.map(({ date, shots }) => [date, shots])).toEqual([
    ['2026-05-01', 1],
    ['2026-05-02', 1],
  ]);
});

test('a ground file is looked at, approved, and kept once', async () => {
  const file = readFileSync(DEMO.ground);
  const url = '/api/courses/files?name=tolvane.geojson';
  const shown = (await api.ask('POST', url, file)).json as GroundFilePreview;
  expect([shown.course, shown.holes.length]).toEqual(['Tolvane Links', 18]);
  expect((await api.ask('GET', '/api/courses')).json).toEqual({ courses: [] });
  expect((await api.ask('POST', `${url}&approve=${'0'.repeat(64)}`, file)).status).toBe(400);
  const kept = (await api.ask('POST', `${url}&approve=${shown.seen}`, file)).json as GroundFilePreview;
  expect(kept.kept).toMatchObject({ already: false });
  expect(((await api.ask('POST', `${url}&approve=${shown.seen}`, file)).json as GroundFilePreview).kept).toEqual({
    course: kept.kept?.course,
    already: true,
  });
  expect((await api.ask('GET', '/api/courses')).json).toMatchObject({
    courses: [{ id: kept.kept?.course, name: 'Tolvane Links' }],
  });
});

test('what is kept stands on the shelf, and opens as what was read from files does', async () => {
  const file = readFileSync(DEMO.ground);
  const url = '/api/courses/files?name=tolvane.geojson';
  const { seen } = (await api.ask('POST', url, file)).json as GroundFilePreview;
  await api.ask('POST', `${url}&approve=${seen}`, file);
  const player = await newPlayer('Oda Reis');
  const shelf = shelfSchema.parse((await api.app.inject({ url: '/api/shelf', headers: OWN })).json());
  const hole = shelf.grounds.at(-1)?.holes.find((h) => h.hole === '7');
  const opened = receivedHole((await api.ask('GET', hole?.url ?? '')).json);
  const { frame, ...rest } = readGround(file.toString('utf8'), 'x').value?.holes.find((h) => h.hole === '7') ?? {
    frame: undefined,
  };
  expect({ ...opened, frame: undefined }).toEqual({ ...rest, frame: undefined });
  expect(opened.frame.origin).toEqual(frame?.origin);
  const moved = receivedHole((await api.ask('GET', `${hole?.url ?? ''}?flag=16,7R`)).json);
  expect(moved.flagFrom).toBe('given');
  expect(moved.flag).not.toEqual(opened.flag);
  expect((await api.ask('GET', `${hole?.url ?? ''}?flag=16`)).status).toBe(400);
  expect((await api.ask('GET', `${hole?.url ?? ''}9`)).status).toBe(404);
  const shelved = shelf.players.find(({ name }) => name === 'Oda Reis');
  expect((await api.ask('GET', shelved?.url ?? '')).json).toEqual({ version: 1, name: 'Oda Reis' });
  expect((await api.ask('GET', shelved?.ballUrls[0] ?? '')).json).toEqual([]);
  expect(shelved?.url).toContain(player);
});

test('a Player file becomes a player, whose name is then taken', async () => {
  const file = readFileSync(DEMO_PLAYERS[0]?.player ?? '');
  const url = '/api/players/files?name=odile.json';
  const { player } = (await api.ask('POST', url, file)).json as { player: string };
  const [fitted] = await current(api.store, { owner: player, kind: 'fitted' });
  expect(fitted?.body.patterns.length).toBeGreaterThan(10);
  expect(await api.ask('POST', url, file)).toMatchObject({ status: 400, json: { faults: [{ code: 'name-taken' }] } });
});

/** The beginning of a photograph with a place in it (JFIF, then EXIF). */
const PHOTOGRAPH = Buffer.from('ffd8ffe000104a46494600010100000100010000ffe1001645786966000049492a0008000000', 'hex');

test('nothing takes photographs, so none is kept with the place it was taken', async () => {
  const player = await newPlayer('Ines Fell');
  for (const url of [
    `/api/players/${player}/shot-files?name=swing.jpg&date=2026-05-14`,
    '/api/courses/files?name=hole.jpg',
    '/api/players/files?name=face.jpg',
    '/api/players/records',
  ])
    expect((await api.ask('POST', url, PHOTOGRAPH)).status).toBe(400);
});

test('uploads over the cap, in another coding or of another kind are turned away', async () => {
  const player = await newPlayer('Bryn Cole');
  const url = `/api/players/${player}/shot-files?name=a.csv&date=2026-05-14`;
  const octets = { ...OWN, 'content-type': 'application/octet-stream' };
  const declared = await api.app.inject({
    method: 'POST',
    url,
    headers: { ...octets, 'content-length': '33000000' },
    payload: 'club,carry',
  });
  expect(declared.statusCode).toBe(413);
  for (const headers of [
    { ...OWN, 'content-type': 'multipart/form-data; boundary=x' },
    { ...OWN, 'content-type': 'text/plain' },
  ])
    expect((await api.app.inject({ method: 'POST', url, headers, payload: 'club,carry' })).statusCode).toBe(415);
  const large = JSON.stringify({ records: [], padding: 'x'.repeat(17 * 2 ** 20) });
  const records = await api.app.inject({
    method: 'POST',
    url: '/api/records',
    headers: { ...OWN, 'content-type': 'application/json' },
    payload: large,
  });
  expect(records.statusCode).toBe(413);
});
