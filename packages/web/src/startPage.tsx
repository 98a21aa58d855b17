import type { Shelf } from '@leeway/contract';
import { effect } from '@preact/signals';
import { render } from 'preact';
import type { PlanDesk } from './asks.ts';
import { addressOf, wantedIn } from './state/address.ts';
import { BROWSER_CLOCK } from './state/clock.ts';
import { holesRound, openOn } from './state/holes.ts';
import { PlanState } from './state/plan.ts';
import { PlanPage } from './view/PlanPage.tsx';
import { documentTitle, WORDS } from './words.ts';

/**
 * Puts the Plan page into `root`: open on what the address asks for, else on the first hole of the shelf. The desk is asked at once, the page shown when
 * it is `ready` to be.
 */
export async function startPage(
  root: HTMLElement,
  desk: PlanDesk,
  shelf: Shelf,
  ready: Promise<unknown>,
): Promise<void> {
  const wanted = wantedIn(location.search);
  const open = openOn(shelf, wanted);
  if (open === undefined) {
    render(<p class="foot">{WORDS.nothing}</p>, root);
    return;
  }
  const state = new PlanState(desk, shelf, BROWSER_CLOCK, {
    ...open,
    units: wanted.units,
    light: wanted.light,
    atFlag: wanted.hole === undefined,
  });
  effect(() => {
    document.documentElement.dataset['light'] = state.light.value;
    history.replaceState(null, '', addressOf(state.open.value, state.units.value, state.light.value));
    const { hole } = holesRound(state.open.value);
    if (hole !== undefined) document.title = documentTitle(hole);
  });
  await ready;
  render(<PlanPage state={state} />, root);
}
