import { effect } from '@preact/signals';
import { render, type VNode } from 'preact';
import { isKeptId } from './keptId.ts';
import { player } from './place.ts';

/** Puts what `page` makes of the player that the address names into `root`, or `nobody`; the result takes it away again. */
export function openFor(root: HTMLElement, nobody: VNode, page: (id: string) => VNode): Promise<() => void> {
  const stop = effect(() => {
    const id = player.value;
    render(isKeptId(id) ? page(id) : nobody, root);
  });
  return Promise.resolve(() => {
    stop();
    render(null, root);
  });
}
