import type { Shelf } from '@leeway/contract';
import type { HoleAnswer, PlanDesk } from '../asks.ts';
import { clean, light, units } from '../shell/remembered.ts';
import { wantedIn } from './address.ts';
import { openOn } from './holes.ts';
import type { Start } from './open.ts';
import { ownOnly } from './own.ts';

/** What the Plan page begins with: the shelf if it came, what is open of it if it holds anything, and the answer that its desk has been asked for. */
export interface First {
  readonly shelf: Shelf | undefined;
  readonly start: Start | undefined;
}

/** Asks for the shelf, and then the desk for the hole that the address names, while the page's own code is still on its way. */
export async function askFirst(desk: PlanDesk): Promise<First> {
  const response = await fetch('/api/shelf').catch(() => undefined);
  const whole = response?.ok === true ? ((await response.json()) as Shelf) : undefined;
  const shelf = whole !== undefined && clean.peek() ? ownOnly(whole) : whole;
  const wanted = wantedIn(location.search, { units: units.peek(), light: light.peek() });
  const opened = shelf === undefined ? undefined : openOn(shelf, wanted);
  if (opened === undefined) return { shelf, start: undefined };
  const answer: Promise<HoleAnswer | undefined> = desk.open({ ...opened, units: wanted.units });
  // whoever waits for it is told
  answer.catch(() => undefined);
  const atFlag = wanted.hole === undefined;
  return { shelf, start: { ...opened, units: wanted.units, light: wanted.light, atFlag, answer } };
}
