import { effect } from '@preact/signals';
import { render } from 'preact';
import { player } from '../shell/place.ts';
import { CarriesPage, NobodysCarries } from './CarriesPage.tsx';
import { CarriesState } from './state.ts';

/** Players that are kept have ids of this shape; the made-up ones, which are files, have no carries to add to. */
const KEPT = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;

/** Puts the Carries page of the player that the address names into `root`; the result takes it away again. */
export function open(root: HTMLElement): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    if (id === undefined || !KEPT.test(id)) {
      render(<NobodysCarries />, root);
      return;
    }
    const state = new CarriesState(id);
    render(<CarriesPage key={id} state={state} />, root);
    void state.load();
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
