import { effect } from '@preact/signals';
import { render } from 'preact';
import { player } from '../shell/place.ts';
import { LedgerPage, NobodysLedger } from './LedgerPage.tsx';
import { LedgerState } from './state.ts';

/** Players that are kept have ids of this shape. */
const KEPT = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;

/** Puts the Ledger page of the player that the address names into `root`; the result takes it away again. */
export function open(root: HTMLElement): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    if (id === undefined || !KEPT.test(id)) {
      render(<NobodysLedger />, root);
      return;
    }
    const state = new LedgerState(id);
    render(<LedgerPage key={id} state={state} />, root);
    void state.load();
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
