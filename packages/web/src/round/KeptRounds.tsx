import { hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { isKept } from '../state/own.ts';
import type { RoundState } from './state.ts';
import { keptOn, ROUND } from './words.ts';

/** The rounds that are kept for this player and course, the newest first. One goes only after it was asked. */
export function KeptRounds({ state }: { readonly state: RoundState }) {
  const kept = state.kept.value;
  return (
    <section class="kept-rounds">
      <h2 class="part">{ROUND.keptHeading}</h2>
      {!isKept(state.player.value) ? (
        <p>
          {ROUND.notOwn} <a href={hrefOf('players', undefined)}>{ROUND.toPlayers}</a>
        </p>
      ) : kept.length === 0 ? (
        <p>{ROUND.none}</p>
      ) : undefined}
      <ul class="notes">
        {kept.map((plan) => {
          const words = keptOn(plan, units.value);
          return (
            <li key={plan.id}>
              <p>{words}</p>
              {state.asking.value === plan.id ? (
                <p>
                  {ROUND.sure}{' '}
                  <button type="button" class="act" onClick={() => void state.takeAway()}>
                    {ROUND.yes}
                  </button>{' '}
                  <button type="button" class="act" onClick={() => (state.asking.value = undefined)}>
                    {ROUND.no}
                  </button>
                </p>
              ) : (
                <div>
                  <button type="button" class="link" onClick={() => (state.opened.value = plan)}>
                    {ROUND.open}
                    <span class="unseen">{words}</span>
                  </button>{' '}
                  <button type="button" class="link" onClick={() => (state.asking.value = plan.id)}>
                    {ROUND.takeAway}
                    <span class="unseen">{words}</span>
                  </button>
                </div>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
