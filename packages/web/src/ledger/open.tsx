import { openFor } from '../shell/openFor.tsx';
import { LedgerPage, NobodysLedger } from './LedgerPage.tsx';
import { LedgerState } from './state.ts';

/** Puts the Ledger page of the player that the address names into `root`; the result takes it away again. */
export const open = (root: HTMLElement): Promise<() => void> =>
  openFor(root, <NobodysLedger />, (id) => {
    const state = new LedgerState(id);
    void state.load();
    return <LedgerPage key={id} state={state} />;
  });
