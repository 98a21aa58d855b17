import { useSignalEffect } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { Field } from '../parts/Field.tsx';
import { Wrong } from '../parts/Says.tsx';
import { hrefOf } from '../shell/place.ts';
import { isKept } from '../state/own.ts';
import type { PlanState } from '../state/plan.ts';
import { KeptState } from './kept.ts';
import { FIRST, keptWords, takesAway } from './words.ts';

/** Keeping the plan or a choice of one's own with its reason, and what was kept for this hole before. */
export function Kept({ state }: { readonly state: PlanState }) {
  const kept = useMemo(() => new KeptState(state), [state]);
  useSignalEffect(() => {
    void state.open.value;
    void kept.load();
  });
  const { hole, player } = state.open.value;
  const own = state.own.cost.value !== undefined;
  if (!isKept(player))
    return (
      <section class="kept">
        <h3>{FIRST.keeping}</h3>
        <p>
          {FIRST.notOwn} <a href={hrefOf('players', undefined)}>{FIRST.toPlayers}</a>
        </p>
      </section>
    );
  const needsWhy = own && kept.reason.value.trim() === '';
  return (
    <section class="kept">
      <h3>{FIRST.keeping}</h3>
      <Wrong fault={kept.fault} />
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (!needsWhy) void kept.keep();
        }}
      >
        {own ? (
          <Field label={FIRST.why} value={kept.reason.value} most={400} set={(v) => (kept.reason.value = v)} />
        ) : undefined}
        {needsWhy ? <p class="small">{FIRST.needWhy}</p> : undefined}
        <button type="submit" class="act first" disabled={needsWhy || state.answered.value !== 'settled'}>
          {own ? FIRST.keepOwn : FIRST.keepPlan}
        </button>
      </form>
      <p role="status" class="says">
        {kept.said}
      </p>
      <h3>{FIRST.keptHeading}</h3>
      {kept.plans.value.length === 0 ? <p class="small">{FIRST.none}</p> : undefined}
      <ul class="notes">
        {kept.plans.value.map((plan) => (
          <li key={plan.id}>
            <p>{keptWords(plan, hole, state.units.value)}</p>
            {kept.asking.value === plan.id ? (
              <p>
                {FIRST.sure}{' '}
                <button type="button" class="act" onClick={() => void kept.takeAway()}>
                  {FIRST.yes}
                </button>{' '}
                <button type="button" class="act" onClick={() => (kept.asking.value = undefined)}>
                  {FIRST.no}
                </button>
              </p>
            ) : (
              <button
                type="button"
                class="link"
                aria-label={takesAway(plan.madeAt)}
                onClick={() => (kept.asking.value = plan.id)}
              >
                {FIRST.takeAway}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
