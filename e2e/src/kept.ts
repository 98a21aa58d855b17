import { expect, type Page } from '@playwright/test';

/** A record that is made now. */
export const made = (body: object) => ({ id: crypto.randomUUID(), madeAt: new Date().toISOString(), body });

/** Keeps records through the pages' own address. */
export async function keep(page: Page, address: string, path: string, records: readonly object[]): Promise<void> {
  const url = new URL(`/api/players/${path}`, address).href;
  const response = await page.request.post(url, { headers: { 'x-leeway': '1' }, data: { records } });
  expect(response.ok(), await response.text()).toBe(true);
}
