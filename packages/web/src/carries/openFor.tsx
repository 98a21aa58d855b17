import { effect } from '@preact/signals';
import { render, type VNode } from 'preact';
import { player } from '../shell/place.ts';
import { NobodysCarries } from './CarriesPage.tsx';
import { isKept } from './isKept.ts';

/** Puts what `page` makes of the player that the address names into `root`, or that nobody is chosen; the result takes it away again. */
export function openFor(root: HTMLElement, page: (id: string) => VNode): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    render(isKept(id) ? page(id) : <NobodysCarries />, root);
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
