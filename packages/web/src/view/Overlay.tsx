import type { Xy } from '@leeway/chart';
import type { PlanePoint } from '@leeway/engine';
import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { FRAME_PX, toPaper } from '../plane/placing.ts';
import type { PlanState } from '../state/plan.ts';
import { BallSign, FlagSign, Triangle } from './Sign.tsx';

/** Flag line, ball, spot and flag, drawn over the picture so that they move at once. The chart's description tells them in words. */
export function Overlay({ state }: { readonly state: PlanState }) {
  const on = (place: ReadonlySignal<PlanePoint | undefined>): ReadonlySignal<Xy | undefined> =>
    useComputed(() => {
      const placing = state.sheets.picture.value?.placing;
      return placing === undefined || place.value === undefined || state.drawing.value
        ? undefined
        : toPaper(placing, place.value);
    });
  const [flag, ball, own] = [on(state.flag), on(state.ball), on(state.own.at)];
  const spot = on(useComputed(() => (state.first.hidden.value ? undefined : state.spot.value)));
  const line = useComputed(() => {
    const [a, b] = [ball.value, flag.value];
    return a === undefined || b === undefined
      ? ''
      : `M${a.x.toFixed(1)} ${a.y.toFixed(1)}L${b.x.toFixed(1)} ${b.y.toFixed(1)}`;
  });
  const { widthPx: w, heightPx: h } = state.sheets.size.value;
  const hasOwn = own.value !== undefined;
  return (
    <svg viewBox={`0 0 ${w} ${h}`} aria-hidden="true">
      <clipPath id="inside">
        <rect x={FRAME_PX} y={FRAME_PX} width={Math.max(0, w - 2 * FRAME_PX)} height={Math.max(0, h - 2 * FRAME_PX)} />
      </clipPath>
      <g clip-path="url(#inside)">
        <path d={line} class="sign-ink" stroke-width="1.1" stroke-dasharray="0.01 4" />
        <Placed at={ball}>
          <BallSign />
        </Placed>
        <Placed at={spot}>
          <Triangle line="buoy" broken={hasOwn} />
        </Placed>
        <Placed at={own}>
          <Triangle line="buoy" />
        </Placed>
        <Placed at={flag}>
          <FlagSign />
        </Placed>
      </g>
    </svg>
  );
}

function Placed({
  at,
  children,
}: {
  readonly at: ReadonlySignal<Xy | undefined>;
  readonly children: ComponentChildren;
}) {
  const transform = useComputed(() =>
    at.value === undefined ? '' : `translate(${at.value.x.toFixed(1)} ${at.value.y.toFixed(1)})`,
  );
  const visibility = useComputed(() => (at.value === undefined ? 'hidden' : 'visible'));
  return (
    <g transform={transform} visibility={visibility}>
      {children}
    </g>
  );
}
