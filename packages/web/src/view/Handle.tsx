import { useComputed, useSignalEffect } from '@preact/signals';
import { FOOT_M, YARD_M, bearingRad, offsetOf, wholeLength } from '@leeway/engine';
import { useRef } from 'preact/hooks';
import { nudged, toPaper } from '../plane/placing.ts';
import type { Handle as Which, PlanState } from '../state/plan.ts';
import { handleHelp, movedWords, WORDS } from '../words.ts';
import { type Grip, moveTo, placeOf, putBackOf } from './grip.ts';

const ARROWS: { readonly [key: string]: readonly [number, number] } = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** What finger and keyboard take hold of: the flag, or the spot. Arrow keys move it up, down and across the sheet. */
export function Handle({
  state,
  grip,
  which,
}: {
  readonly state: PlanState;
  readonly grip: Grip;
  readonly which: Which;
}) {
  const putBack = useRef<() => void>(() => undefined);
  const handle = useRef<HTMLDivElement>(null);
  // set on the element: the page's policy lets no style attribute in
  useSignalEffect(() => {
    const on = handle.current;
    if (on === null) return;
    const place = placeOf(state, which);
    const placing = state.sheets.picture.value?.placing;
    const shown = placing !== undefined && !state.drawing.value && state.sheets.shows(place);
    on.hidden = !shown;
    if (!shown || place === undefined) return;
    const { x, y } = toPaper(placing, place);
    on.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
  });
  const moved = useComputed(() => {
    const from = which === 'flag' ? state.startFlag.value : state.spotFrom.value;
    const [place, ball] = [placeOf(state, which), state.ball.value];
    if (place === undefined || from === undefined || ball === undefined) return undefined;
    const bearing = bearingRad(ball, from);
    return { outM: offsetOf(place, ball, bearing).alongM, ...offsetOf(place, from, bearing) };
  });
  const now = useComputed(() => wholeLength(moved.value?.outM ?? 0, state.units.value));
  const words = useComputed(() => {
    const { alongM = 0, acrossM = 0 } = moved.value ?? {};
    return movedWords(acrossM, alongM, state.units.value);
  });
  const stepM = (fine: boolean): number => (state.units.value === 'yd' ? (fine ? FOOT_M : YARD_M) : fine ? 0.25 : 1);
  const onKeyDown = (e: KeyboardEvent): void => {
    handle.current?.parentElement?.removeAttribute('data-by');
    if (e.key === 'Escape') {
      if (!grip.letGo()) putBack.current();
      return;
    }
    const arrow = ARROWS[e.key];
    const placing = state.sheets.picture.value?.placing;
    const place = placeOf(state, which);
    if (arrow === undefined || placing === undefined || place === undefined) return;
    e.preventDefault();
    const step = stepM(e.shiftKey);
    moveTo(state, which, nudged(placing, place, arrow[0] * step, arrow[1] * step));
  };
  return (
    <>
      <div
        id={`handle-${which}`}
        class={`handle ${which}`}
        ref={handle}
        role="slider"
        tabIndex={0}
        aria-label={which === 'flag' ? WORDS.flag : WORDS.spot}
        aria-valuenow={now}
        aria-valuetext={words}
        aria-describedby={`help-${which}`}
        onKeyDown={onKeyDown}
        onFocus={() => (putBack.current = putBackOf(state, which))}
      />
      <span class="unseen" id={`help-${which}`}>
        {handleHelp(state.units.value)}
      </span>
    </>
  );
}
