import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { PlanState } from '../state/plan.ts';
import { holesRound } from '../state/holes.ts';
import { drawingWords, WORDS, workingWords } from '../words.ts';
import { Bitmap } from './Bitmap.tsx';
import { Grip } from './grip.ts';
import { Handle } from './Handle.tsx';
import { Overlay } from './Overlay.tsx';
import { WindArrow } from './WindArrow.tsx';
import { watchRoom } from './watchRoom.ts';

/** The chart of the shown shot: the desk's picture, over it the signs that move with the finger, over those what one takes hold of. */
export function Sheet({ state }: { readonly state: PlanState }) {
  const box = useRef<HTMLDivElement>(null);
  // at once, so that the desk can begin the sheet
  useLayoutEffect(() => (box.current === null ? undefined : watchRoom(box.current, state)), [state]);
  const grip = useMemo(() => new Grip(state), [state]);
  const waits = state.hole.value === undefined && state.fault.value === undefined;
  const { hole, player } = state.open.value;
  return (
    <section class="chart" aria-label={WORDS.chart}>
      <div
        ref={box}
        class={`sheet${state.placing.value === undefined ? '' : ' taking'}${state.drawing.value ? ' drawing' : ''}${state.hole.value === undefined ? ' empty' : ''}`}
        onPointerDown={grip.down}
        onPointerMove={grip.move}
        onPointerUp={grip.up}
        onPointerCancel={grip.cancel}
      >
        <Bitmap picture={state.sheets.picture} id="chart-words" />
        <Overlay state={state} />
        <WindArrow state={state} />
        <Handle state={state} grip={grip} which="spot" />
        <Handle state={state} grip={grip} which="flag" />
        {state.flagWasMoved.value || state.sheets.picture.value === undefined ? undefined : (
          <p class="hint">{state.first.hidden.value ? WORDS.chooseHint : WORDS.dragFlag}</p>
        )}
        {state.drawing.value && !waits ? (
          <p class="waits late" role="status">
            {drawingWords(state.index.value)}
          </p>
        ) : undefined}
        {waits ? (
          <p class="waits" role="status">
            {workingWords(holesRound(state.open.value).hole?.hole ?? hole, player.name)}
          </p>
        ) : undefined}
      </div>
    </section>
  );
}
