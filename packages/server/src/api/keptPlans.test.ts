import { readFileSync } from 'node:fs';
import type { KeptPlan } from '@leeway/contract';
import { newId, planOf } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApi, type TestApi } from '../testdata/testApi.ts';

let api: TestApi;
beforeAll(async () => {
  api = await openTestApi();
}, 60_000);
afterAll(() => api.close());

const owner = newId();
const example = JSON.parse(
  readFileSync(new URL('../../../contract/src/stored/testdata/plan.2.json', import.meta.url), 'utf8'),
) as { readonly body: { readonly own: object; readonly lines: object } };
const { own, lines } = example.body;
const { plan, date } = planOf(owner).body as { readonly plan: object; readonly date: string };

const keep = async (course: string, more: object = {}): Promise<string> => {
  const id = newId();
  const body = { date, plan: { ...plan, course }, ...more };
  const records = [{ id, madeAt: '2026-11-28T18:04:00Z', body }];
  expect((await api.ask('POST', `/api/players/${owner}/plans`, { records })).status).toBe(200);
  return id;
};
const kept = async (asked = ''): Promise<readonly KeptPlan[]> =>
  ((await api.ask('GET', `/api/players/${owner}/kept-plans${asked}`)).json as { plans: KeptPlan[] }).plans;

test('a plan is kept with the coach’s own choice and its reason, listed in short, and gone when it was taken away', async () => {
  const mine = await keep('Rill Meadow', { own, lines });
  const other = await keep('Fen Course');
  expect((await kept()).map(({ id }) => id)).toEqual([mine, other]);
  expect(await kept('?course=Rill%20Meadow')).toMatchObject([{ id: mine, date, own, lines, holes: [] }]);
  expect(await kept('?course=Rill%20Meadow&hole=7')).toEqual([]);

  const records = [{ id: newId(), madeAt: '2026-11-28T18:05:00Z', supersedes: mine, body: {} }];
  expect((await api.ask('POST', `/api/players/${owner}/withdrawals`, { records })).status).toBe(200);
  expect((await kept()).map(({ id }) => id)).toEqual([other]);
});

test('a kept plan is frozen: a correction of it, and a choice without a reason, are refused', async () => {
  const id = await keep('Rill Meadow', { own });
  const again = { id: newId(), madeAt: '2026-11-28T18:06:00Z', supersedes: id, body: { date, plan } };
  expect((await api.ask('POST', `/api/players/${owner}/plans`, { records: [again] })).status).toBe(409);
  const mute = { id: newId(), madeAt: '2026-11-28T18:06:00Z', body: { date, plan, own: { ...own, reason: ' ' } } };
  expect((await api.ask('POST', `/api/players/${owner}/plans`, { records: [mute] })).status).toBe(400);
});
