import type { Standing } from '@leeway/contract';
import { got, newRecord, sent } from './api.ts';

const LOOK_AGAIN_MS = 250;

/** Asks for an errand to be done for a player, telling how that stands until it has ended. */
export async function doErrand(owner: string, task: object, told: (standing: Standing) => void): Promise<Standing> {
  const errand = newRecord(task);
  const url = `/api/players/${owner}/errands`;
  let standing = await sent<Standing>(url, errand);
  while (standing.state === 'waiting' || standing.state === 'running') {
    told(standing);
    // looked at from time to time: one after the other is the point
    // oxlint-disable-next-line no-await-in-loop
    await new Promise((then) => setTimeout(then, LOOK_AGAIN_MS));
    // oxlint-disable-next-line no-await-in-loop
    standing = await got<Standing>(`${url}/${errand.id}`);
  }
  return standing;
}
