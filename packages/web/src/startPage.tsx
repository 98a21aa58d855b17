import { effect } from '@preact/signals';
import { render } from 'preact';
import type { openDesk } from './openDesk.ts';
import { remember } from './shell/remembered.ts';
import { go } from './shell/place.ts';
import { addressOf } from './state/address.ts';
import { BROWSER_CLOCK } from './state/clock.ts';
import type { First } from './state/first.ts';
import { holesRound } from './state/holes.ts';
import { PlanState } from './state/plan.ts';
import { NothingToPlan } from './view/NothingToPlan.tsx';
import { PlanPage } from './view/PlanPage.tsx';
import { documentTitle, WORDS } from './words.ts';

/** Headings are set in this; the page waits a little for it, so that nothing moves when it comes. */
const FIRST_FONTS = [`400 37px 'Libre Caslon Text'`, `600 46px 'Barlow Semi Condensed'`];
const FONTS_MS = 400;

/**
 * Puts the Plan page into `root`: open on what the desk has been asked for first. It is shown when
 * its first fonts are there or have been waited for. The result takes it away again.
 */
export async function open(
  root: HTMLElement,
  { desk, close }: ReturnType<typeof openDesk>,
  first: Promise<First>,
): Promise<() => void> {
  const fonts = Promise.all(FIRST_FONTS.map((font) => document.fonts.load(font)));
  const patience = new Promise((then) => setTimeout(then, FONTS_MS));
  const { shelf, start } = await first;
  if (shelf === undefined || start === undefined) {
    render(shelf === undefined ? <p class="foot">{WORDS.noShelf}</p> : <NothingToPlan />, root);
    return () => {
      close();
      render(null, root);
    };
  }
  const state = new PlanState(desk, shelf, BROWSER_CLOCK, start);
  const stop = effect(() => {
    remember({ units: state.units.value, light: state.light.value });
    go(addressOf(state.open.value, state.units.value, state.light.value), 'replace');
    const { hole } = holesRound(state.open.value);
    if (hole !== undefined) document.title = documentTitle(hole);
  });
  await Promise.race([fonts, patience]);
  render(<PlanPage state={state} />, root);
  return () => {
    stop();
    render(null, root);
    close();
  };
}
