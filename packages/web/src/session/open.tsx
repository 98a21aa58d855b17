import { effect } from '@preact/signals';
import { render } from 'preact';
import { NobodysCarries } from '../carries/CarriesPage.tsx';
import { isKept } from '../carries/isKept.ts';
import { player } from '../shell/place.ts';
import { SessionPage } from './SessionPage.tsx';
import { SessionState } from './state.ts';

/** Puts the Session page of the player that the address names into `root`; the result takes it away again. */
export function open(root: HTMLElement): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    if (!isKept(id)) {
      render(<NobodysCarries />, root);
      return;
    }
    const state = new SessionState(id);
    render(<SessionPage key={id} state={state} />, root);
    void state.load();
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
