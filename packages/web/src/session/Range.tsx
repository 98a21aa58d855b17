import type { FromAbove } from '@leeway/chart';
import { YARD_M } from '@leeway/engine';
import { useComputed } from '@preact/signals';
import { Painted } from '../parts/Painted.tsx';
import { units } from '../shell/remembered.ts';
import { ballKeyed, keyedAt } from './keyed.ts';
import type { SessionState } from './state.ts';
import { clubWords, SESSION } from './words.ts';

/** Along and across of a ball told by carry and side. */
const placed = (carryM: number, sideM: number): { readonly alongM: number; readonly acrossM: number } => ({
  alongM: Math.sqrt(Math.max(0, carryM ** 2 - sideM ** 2)),
  acrossM: sideM,
});

/** The range from above, with the balls of the club in hand: a tap says where the next one landed. */
export function Range({ state }: { readonly state: SessionState }) {
  const above = useComputed((): FromAbove | undefined => {
    const option = state.present.value;
    if (option === undefined) return undefined;
    const read = ballKeyed(state.keyed.value, units.value);
    const aboutM = state.carryOf(option);
    return {
      title: clubWords(option),
      units: units.value,
      balls: state
        .ballsOf(option)
        .map(({ carryM, sideM = 0, mishit }) => ({ ...placed(carryM, sideM), mishit: mishit === true })),
      ...(aboutM === undefined ? {} : { aboutM }),
      ...(typeof read === 'string' ? {} : { told: placed(read.carryM, read.sideM ?? 0) }),
    };
  });
  if (above.value === undefined) return undefined;
  const unitM = units.value === 'yd' ? YARD_M : 1;
  return (
    <figure class="range" aria-label={SESSION.range}>
      <div>
        <Painted above={above.value} tap={(alongM, acrossM) => (state.keyed.value = keyedAt(alongM, acrossM, unitM))} />
      </div>
      <figcaption class="small">{SESSION.tap}</figcaption>
    </figure>
  );
}
