import { effect } from '@preact/signals';
import { render } from 'preact';
import { unsent } from '../session/unsent.ts';
import { player } from '../shell/place.ts';
import { CarriesPage, NobodysCarries } from './CarriesPage.tsx';
import { isKept } from './isKept.ts';
import { CarriesState } from './state.ts';

/** Puts the Carries page of the player that the address names into `root`; the result takes it away again. */
export function open(root: HTMLElement): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    if (!isKept(id)) {
      render(<NobodysCarries />, root);
      return;
    }
    const state = new CarriesState(id);
    render(<CarriesPage key={id} state={state} />, root);
    void unsent.flush().then(() => state.load());
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
