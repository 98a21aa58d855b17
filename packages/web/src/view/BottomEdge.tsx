import type { Signal } from '@preact/signals';
import { holesRound } from '../state/holes.ts';
import type { PlanState } from '../state/plan.ts';
import { PHONE_EDGE, shotTitle, WORDS } from '../words.ts';

/** The phone's bottom edge: the shot before (or the hole before), one act, the shot after (or the next hole). */
export function BottomEdge({ state, more }: { readonly state: PlanState; readonly more: Signal<boolean> }) {
  const index = state.index.value;
  const count = state.plan.value?.shots.length ?? 0;
  const { before, after } = holesRound(state.open.value);
  const shotAt = (i: number) =>
    i < 0 || i >= count
      ? undefined
      : { number: `${i + 1}`, words: shotTitle(i).toLowerCase(), go: () => state.showShot(i) };
  const back =
    shotAt(index - 1) ??
    (before && { number: before.hole, words: PHONE_EDGE.holeBefore, go: () => state.turnTo({ hole: before.hole }) });
  const on =
    shotAt(index + 1) ??
    (after && { number: after.hole, words: PHONE_EDGE.nextHole, go: () => state.turnTo({ hole: after.hole }) });
  return (
    <div class="edge">
      {back === undefined ? <span /> : <Step {...back} />}
      {state.first.hidden.value ? (
        <button
          type="button"
          class="middle"
          disabled={state.own.at.value === undefined || state.own.option.value === undefined}
          onClick={() => state.showAnswer()}
        >
          {WORDS.showAnswer}
        </button>
      ) : (
        <button
          type="button"
          class="middle"
          aria-expanded={more.value}
          aria-controls="more"
          onClick={() => (more.value = !more.value)}
        >
          {more.value ? WORDS.less : WORDS.more}
        </button>
      )}
      {on === undefined ? <span /> : <Step {...on} />}
    </div>
  );
}

const Step = (p: { readonly number: string; readonly words: string; readonly go: () => void }) => (
  <button type="button" class="step" onClick={p.go}>
    <b class="figure">{p.number}</b> {p.words}
  </button>
);
