import type { Shelf } from '@leeway/contract';
import { effect } from '@preact/signals';
import { render } from 'preact';
import { clean } from '../shell/remembered.ts';
import { openOn } from '../state/holes.ts';
import { ownOnly } from '../state/own.ts';
import { NothingToPlan } from '../view/NothingToPlan.tsx';
import { openRoundDesk } from './openDesk.ts';
import { RoundPage } from './RoundPage.tsx';
import { RoundState } from './state.ts';
import { ROUND } from './words.ts';

/** Puts the round page into `root`, open on the course and player that the address names; the result takes it away again. */
export async function open(root: HTMLElement): Promise<() => void> {
  const response = await fetch('/api/shelf').catch(() => undefined);
  const whole = response?.ok === true ? ((await response.json()) as Shelf) : undefined;
  const shelf = whole !== undefined && clean.peek() ? ownOnly(whole) : whole;
  const asked = new URLSearchParams(location.search);
  const named = (key: 'ground' | 'player') => {
    const value = asked.get(key);
    return value === null ? {} : { [key]: value };
  };
  const start = shelf === undefined ? undefined : openOn(shelf, { ...named('ground'), ...named('player') });
  if (shelf === undefined || start === undefined) {
    render(shelf === undefined ? <p class="foot">{ROUND.noShelf}</p> : <NothingToPlan />, root);
    return () => render(null, root);
  }
  const state = new RoundState(shelf, start, openRoundDesk);
  const stop = effect(() => {
    void state.loadKept();
  });
  render(<RoundPage state={state} />, root);
  return () => {
    stop();
    state.stop();
    render(null, root);
  };
}
