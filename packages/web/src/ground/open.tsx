import { render } from 'preact';
import { GroundPage } from './GroundPage.tsx';
import { GroundState } from './state.ts';

/** Puts the Ground page into `root`; the result takes it away again. */
export function open(root: HTMLElement): Promise<() => void> {
  const state = new GroundState();
  render(<GroundPage state={state} />, root);
  void state.load();
  return Promise.resolve(() => render(null, root));
}
