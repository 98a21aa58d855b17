import { useComputed, useSignalEffect } from '@preact/signals';
import { RAD_PER_DEG } from '@leeway/engine';
import { useRef } from 'preact/hooks';
import type { PlanState } from '../state/plan.ts';
import { windHelp, windSaid } from '../day/words.ts';
import { WORDS } from '../words.ts';

/** From the middle of a full-sized rose to the knob. */
const KNOB_PX = 45;
const TURN_DEG = 5;
/** What a calm becomes when the arrow is taken hold of: 10 mph, or 5 m/s. */
const FRESH_MPS = { yd: 4.4704, m: 5 };
const STEP_MPS = { yd: 0.44704, m: 0.5 };
const MOST_MPS = 20;

/** The wind's arrow through the rose. It is turned by its knob or by keys, and drawn at once; a calm has a faint one. */
export function WindArrow({ state }: { readonly state: PlanState }) {
  const handle = useRef<HTMLDivElement>(null);
  const held = useRef<number | undefined>(undefined);
  const putBack = useRef(state.wind.peek());
  const rose = useComputed(() => {
    const picture = state.sheets.picture.value;
    return picture === undefined || state.drawing.value ? undefined : picture.rose;
  });
  const upDeg = useComputed(() => (state.sheets.picture.value?.placing.upRad ?? 0) / RAD_PER_DEG);
  useSignalEffect(() => {
    const on = handle.current;
    if (on === null) return;
    const place = rose.value;
    on.hidden = place === undefined;
    if (place === undefined) return;
    const turn = (state.wind.value.fromDeg - upDeg.value) * RAD_PER_DEG;
    const reach = KNOB_PX * place.scale;
    on.style.transform = `translate(${(place.at.x + reach * Math.sin(turn)).toFixed(1)}px, ${(place.at.y - reach * Math.cos(turn)).toFixed(1)}px)`;
  });
  const transform = useComputed(() => {
    const place = rose.value;
    if (place === undefined) return '';
    const turn = state.wind.value.fromDeg - upDeg.value;
    return `translate(${place.at.x} ${place.at.y}) rotate(${turn.toFixed(2)}) scale(${place.scale})`;
  });
  const fresh = (): { speedMps?: number } =>
    state.wind.peek().speedMps > 0 ? {} : { speedMps: FRESH_MPS[state.units.peek()] };
  const turnTo = (e: PointerEvent): void => {
    const place = rose.peek();
    const sheet = handle.current?.parentElement?.getBoundingClientRect();
    if (place === undefined || sheet === undefined) return;
    const [x, y] = [e.clientX - sheet.left - place.at.x, e.clientY - sheet.top - place.at.y];
    state.windTo({ fromDeg: wrapped(Math.atan2(x, -y) / RAD_PER_DEG + upDeg.peek()), ...fresh() });
  };
  const onPointerDown = (e: PointerEvent): void => {
    if (e.button !== 0) return;
    e.preventDefault();
    e.stopPropagation();
    const on = e.currentTarget as HTMLElement;
    on.setPointerCapture(e.pointerId);
    // a finger sees what it holds
    if (on.parentElement !== null) on.parentElement.dataset['by'] = 'finger';
    on.focus({ preventScroll: true });
    held.current = e.pointerId;
    putBack.current = state.wind.peek();
  };
  const onPointerMove = (e: PointerEvent): void => {
    if (held.current !== e.pointerId) return;
    e.stopPropagation();
    turnTo(e);
  };
  const letGo = (e: PointerEvent): void => {
    if (held.current === e.pointerId) held.current = undefined;
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    handle.current?.parentElement?.removeAttribute('data-by');
    const { fromDeg, speedMps } = state.wind.peek();
    const turn = e.key === 'ArrowRight' ? 1 : e.key === 'ArrowLeft' ? -1 : 0;
    const more = e.key === 'ArrowUp' ? 1 : e.key === 'ArrowDown' ? -1 : 0;
    if (e.key === 'Escape') {
      held.current = undefined;
      state.windTo(putBack.current);
    } else if (turn !== 0) state.windTo({ fromDeg: wrapped(fromDeg + turn * (e.shiftKey ? 1 : TURN_DEG)), ...fresh() });
    else if (more !== 0)
      state.windTo({ speedMps: Math.min(MOST_MPS, Math.max(0, speedMps + more * STEP_MPS[state.units.peek()])) });
    else return;
    e.preventDefault();
  };
  const { fromDeg, speedMps } = state.wind.value;
  return (
    <>
      <svg class="wind" aria-hidden="true">
        <g
          transform={transform}
          visibility={rose.value === undefined ? 'hidden' : 'visible'}
          class={speedMps > 0 ? '' : 'calm'}
        >
          <path class="sign-halo" stroke-width="4.6" d={`M0-38V22${HEAD}`} />
          <path class="sign-ink" stroke-width="2.2" d="M0-38V22" />
          <path class="head" d={HEAD} />
          <circle class="knob" cy={-KNOB_PX} r="7" />
          <path class="sign-ink" stroke-width="1" d="M-3-47.6H3M-4-45H4M-3-42.4H3" />
        </g>
      </svg>
      <div
        id="handle-wind"
        class="handle"
        ref={handle}
        role="slider"
        tabIndex={0}
        aria-label={WORDS.wind}
        aria-valuemin={0}
        aria-valuemax={359}
        aria-valuenow={Math.round(fromDeg)}
        aria-valuetext={windSaid(state.wind.value, state.units.value)}
        aria-describedby="help-wind"
        onKeyDown={onKeyDown}
        onFocus={() => (putBack.current = state.wind.peek())}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={letGo}
        onPointerCancel={letGo}
      />
      <span class="unseen" id="help-wind">
        {windHelp(state.units.value)}
      </span>
    </>
  );
}

const HEAD = 'M0 32L-5 20L0 22.5L5 20Z';

const wrapped = (deg: number): number => ((Math.round(deg) % 360) + 360) % 360;
