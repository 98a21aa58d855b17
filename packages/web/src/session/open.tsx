import { NobodysCarries } from '../carries/CarriesPage.tsx';
import { openFor } from '../shell/openFor.tsx';
import { SessionPage } from './SessionPage.tsx';
import { SessionState } from './state.ts';

/** Puts the Session page of the player that the address names into `root`; the result takes it away again. */
export const open = (root: HTMLElement): Promise<() => void> =>
  openFor(root, <NobodysCarries />, (id) => {
    const state = new SessionState(id);
    void state.load();
    return <SessionPage key={id} state={state} />;
  });
