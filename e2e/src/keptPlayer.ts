import { randomUUID } from 'node:crypto';
import { type APIRequestContext, expect } from '@playwright/test';

/** Keeps a player of a handicap, without a ball hit yet, under an id. */
export async function keepPlayer(request: APIRequestContext, address: string, owner: string): Promise<void> {
  const body = { name: 'Tilda Brook', hand: 'right', handicapIndex: 17.2 };
  const records = [{ id: randomUUID(), madeAt: new Date().toISOString(), body }];
  const answer = await request.post(new URL(`/api/players/${owner}/profiles`, address).href, {
    headers: { 'x-leeway': '1' },
    data: { records },
  });
  expect(answer.status(), await answer.text()).toBe(200);
}
