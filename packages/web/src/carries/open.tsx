import { unsent } from '../session/unsent.ts';
import { CarriesPage } from './CarriesPage.tsx';
import { openFor } from './openFor.tsx';
import { CarriesState } from './state.ts';

/** Puts the Carries page of the player that the address names into `root`; the result takes it away again. */
export const open = (root: HTMLElement): Promise<() => void> =>
  openFor(root, (id) => {
    const state = new CarriesState(id);
    void unsent.flush().then(() => state.load());
    return <CarriesPage key={id} state={state} />;
  });
