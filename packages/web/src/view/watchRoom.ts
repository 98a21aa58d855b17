import type { PlanState } from '../state/plan.ts';

/** Below this the page is a phone's. */
const PHONE = '(max-width: 639px)';

/** Keeps the state told how large the sheet is; the result stops it. */
export function watchRoom(box: HTMLElement, state: PlanState): () => void {
  const phone = matchMedia(PHONE);
  const tell = (): void => {
    const [widthPx, heightPx] = [Math.round(box.clientWidth), Math.round(box.clientHeight)];
    const next = { widthPx, heightPx, pixelRatio: devicePixelRatio, phone: phone.matches };
    const last = state.sheets.room.peek();
    const same =
      last !== undefined && (Object.keys(next) as (keyof typeof next)[]).every((key) => last[key] === next[key]);
    if (widthPx > 0 && heightPx > 0 && !same) state.sheets.room.value = next;
  };
  tell();
  const watcher = new ResizeObserver(tell);
  watcher.observe(box);
  return () => watcher.disconnect();
}
