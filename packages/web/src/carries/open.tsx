import { unsent } from '../session/unsent.ts';
import { openFor } from '../shell/openFor.tsx';
import { CarriesPage, NobodysCarries } from './CarriesPage.tsx';
import { CarriesState } from './state.ts';

/** Puts the Carries page of the player that the address names into `root`; the result takes it away again. */
export const open = (root: HTMLElement): Promise<() => void> =>
  openFor(root, <NobodysCarries />, (id) => {
    const state = new CarriesState(id);
    void unsent.flush().then(() => state.load());
    return <CarriesPage key={id} state={state} />;
  });
