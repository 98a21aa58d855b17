import { effect } from '@preact/signals';
import { render } from 'preact';
import { player } from '../shell/place.ts';
import { PlayersPage } from './PlayersPage.tsx';
import { PlayersState } from './state.ts';

/** Puts the Players page into `root`, open on the player that the address names; the result takes it away again. */
export async function open(root: HTMLElement): Promise<() => void> {
  const state = new PlayersState();
  render(<PlayersPage state={state} />, root);
  await state.load();
  const stop = effect(() => {
    const id = player.value;
    if (id !== state.chosenId.peek() && state.form.peek() !== 'new') void state.choose(id);
  });
  return () => {
    stop();
    render(null, root);
  };
}
