import { shelfSchema } from '@leeway/contract';
import { newId } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApi, OWN, type TestApi } from '../testdata/testApi.ts';

let api: TestApi;
beforeAll(async () => {
  api = await openTestApi();
}, 60_000);
afterAll(() => api.close());

const hole = (number: string, change: object = {}) => ({
  hole: number,
  lengthM: 350,
  green: { depthM: 28, widthM: 24 },
  hazards: [{ kind: 'water', reachM: 280, carryM: 295, side: 'across' }],
  ...change,
});
const send = (body: object) => api.ask('POST', '/api/courses/numbers', { name: 'Rill Meadow', keep: false, ...body });

interface Answer {
  readonly faults: readonly { readonly code: string; readonly at?: string }[];
  readonly last?: { readonly hole: { readonly par: number } };
  readonly kept?: string;
}

test('typed holes are looked at, kept, added to, and stand on the shelf as a course of the coach’s own', async () => {
  const looked = (await send({ holes: [hole('1')] })).json as Answer;
  expect([looked.faults.map(({ code }) => code), looked.last?.hole.par, looked.kept]).toEqual([
    ['no-par'],
    4,
    undefined,
  ]);
  expect((await api.ask('GET', '/api/courses')).json).toEqual({ courses: [] });

  const { kept } = (await send({ holes: [hole('1')], keep: true })).json as Answer;
  const more = (await send({ course: kept, holes: [hole('1'), hole('2', { lengthM: 140, hazards: [] })], keep: true }))
    .json as Answer;
  const numbers = (await api.ask('GET', `/api/courses/${more.kept}/numbers`)).json;
  expect(numbers).toEqual({ holes: [hole('1'), hole('2', { lengthM: 140, hazards: [] })] });
  const sent = await api.app.inject({ url: '/api/shelf', headers: OWN });
  const [ground, ...others] = shelfSchema.parse(sent.json()).grounds;
  expect([ground?.id, ground?.kept, others]).toEqual([more.kept, true, []]);
  expect(ground?.holes.map((h) => [h.hole, h.par])).toEqual([
    ['1', 4],
    ['2', 3],
  ]);
  const opened = await api.ask('GET', ground?.holes[1]?.url ?? '');
  expect(opened.json).toMatchObject({ course: 'Rill Meadow', attribution: expect.stringContaining('typed') });
});

test('holes that cannot be played are told by their place, and nothing is kept of them', async () => {
  const before = (await api.ask('GET', '/api/courses')).json;
  const wrong = hole('3', { hazards: [{ kind: 'sand', reachM: 200, carryM: 190, side: 'left' }] });
  const { faults, kept } = (await send({ holes: [hole('1'), wrong], keep: true })).json as Answer;
  expect([faults.map(({ at }) => at), kept]).toEqual([['hole 3: hazard 1'], undefined]);
  expect((await send({ holes: [hole('1', { lengthM: 5 })] })).status).toBe(400);
  expect((await api.ask('GET', '/api/courses')).json).toEqual(before);
});

test('a course from a map is not typed over', async () => {
  const id = newId();
  const record = {
    id,
    madeAt: '2026-05-14T09:30:00Z',
    body: { name: 'The links', ground: { file: 'a.geojson', text: '{}' } },
  };
  await api.ask('POST', '/api/house/courses', { records: [record] });
  expect((await api.ask('GET', `/api/courses/${id}/numbers`)).json).toEqual({ holes: [] });
  expect(await send({ course: id, holes: [hole('1')], keep: true })).toMatchObject({
    status: 400,
    json: { faults: [{ code: 'not-typed' }] },
  });
});
