import { optionWords } from '@leeway/engine';
import { useSignal, useSignalEffect } from '@preact/signals';
import type { Option } from '../asks.ts';
import type { PlanState } from '../state/plan.ts';
import { ownPlaceWords, toChoose, FIRST } from './words.ts';

/** In the place of the choice while it is hidden: club and spot are chosen here and on the sheet, then the answer is shown beside them. */
export function FirstPanel({ state }: { readonly state: PlanState }) {
  const options = useSignal<readonly Option[]>([]);
  useSignalEffect(() => {
    const [shot, plan] = [state.index.value, state.plan.value];
    if (plan === undefined) return;
    void playable(state).then((found) => (shot === state.index.peek() ? (options.value = found) : found));
  });
  const { own, units } = state;
  const chosen = options.value.findIndex(
    (o) => o.club === own.option.value?.club && o.swing === own.option.value.swing,
  );
  const shot = state.shot.value;
  const [ball, flag, at] = [state.ball.value, state.flag.value, own.at.value];
  const place = ball && flag && at ? ownPlaceWords({ ball, flag, at }, units.value) : FIRST.noSpot;
  return (
    <section class="first" aria-label={FIRST.heading}>
      <h2>
        <span>{FIRST.heading}</span>
      </h2>
      {shot === undefined ? undefined : <p class="from">{toChoose(shot, units.value)}</p>}
      <p>{FIRST.lead}</p>
      <div class="field">
        <label>
          <span>{FIRST.club}</span>
          <span class="line">
            <select
              value={`${chosen}`}
              onChange={(e) => (own.option.value = options.value[Number(e.currentTarget.value)])}
            >
              <option value="-1">{FIRST.noClub}</option>
              {options.value.map((option, i) => (
                <option key={i} value={`${i}`}>
                  {optionWords(option)}
                </option>
              ))}
            </select>
          </span>
        </label>
      </div>
      <p role="status">{place}</p>
      <div class="acts">
        <button
          type="button"
          class="act first"
          disabled={own.at.value === undefined || own.option.value === undefined}
          onClick={() => state.showAnswer()}
        >
          {FIRST.show}
        </button>
        <button type="button" class="act" onClick={() => state.hideAnswers(false)}>
          {FIRST.leave}
        </button>
      </div>
    </section>
  );
}

/** What can be played; nothing when that could not be had, which the page tells elsewhere. */
const playable = async (state: PlanState): Promise<readonly Option[]> =>
  (await state.options().catch(() => undefined)) ?? [];
