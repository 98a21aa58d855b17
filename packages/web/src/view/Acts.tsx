import { hrefOf } from '../shell/place.ts';
import type { Handle, PlanState } from '../state/plan.ts';
import { scoresWords, settleWords, sureLong, sureShort } from '../sure/words.ts';
import { WORDS } from '../words.ts';

/** Moving flag and spot by a tap, and having them back. */
export function Acts({ state }: { readonly state: PlanState }) {
  if (state.hole.value === undefined) return undefined;
  const { ground, player } = state.open.value;
  const act = (which: Handle, words: string, first: boolean) => (
    <button
      type="button"
      class={first ? 'act first' : 'act'}
      aria-pressed={state.placing.value === which}
      onClick={() => state.take(state.placing.value === which ? undefined : which)}
    >
      {words}
    </button>
  );
  return (
    <div class="acts">
      {act('flag', WORDS.moveFlag, !state.first.hidden.value)}
      {state.first.hidden.value ? undefined : (
        <>
          {act('spot', WORDS.moveSpot, false)}
          <button
            type="button"
            class="act"
            aria-pressed={state.first.on.value}
            onClick={() => state.hideAnswers(!state.first.on.value)}
          >
            {WORDS.youFirst}
          </button>
          <button
            type="button"
            class="act"
            aria-expanded={state.keeping.value}
            onClick={() => (state.keeping.value = !state.keeping.value)}
          >
            {WORDS.keep}
          </button>
          <a class="act" href={hrefOf('round', player.id, { ground: ground.id })}>
            {WORDS.wholeRound}
          </a>
        </>
      )}
      {state.flagMoved.value ? (
        <button type="button" class="act" onClick={() => state.flagToStart()}>
          {WORDS.flagBack}
        </button>
      ) : undefined}
    </div>
  );
}

/** What the page waits for: a tap, or the choice for a flag that has moved. */
export function Waits({ state }: { readonly state: PlanState }) {
  const { placing, lags } = { placing: state.placing.value, lags: state.lags.value };
  return (
    <div class="tap">
      <p role="status">{placing === undefined ? '' : placing === 'flag' ? WORDS.tapFlag : WORDS.tapSpot}</p>
      {lags ? <p class="late">{WORDS.lags}</p> : undefined}
    </div>
  );
}

/** How sure, with the way to the balls behind it. */
export function Sure({ state }: { readonly state: PlanState }) {
  const shot = state.shot.value;
  if (shot === undefined) return undefined;
  const shown = state.behind.value !== undefined;
  const settle = settleWords(shot);
  return (
    <section class="sure">
      <h3 class="unseen">{WORDS.howSure}</h3>
      <p class="small" title={sureLong(shot)}>
        {sureShort(shot)}
      </p>
      {settle === '' ? undefined : <p class="small">{settle}</p>}
      {shot.evidence === 'fitted' ? (
        <button
          type="button"
          class="link"
          aria-expanded={shown}
          aria-controls="behind"
          onClick={() => (shown ? state.hideBehind() : void state.showBehind())}
        >
          {shown ? WORDS.hideShots : WORDS.seeShots}
        </button>
      ) : undefined}{' '}
      <ScoreChances state={state} />
    </section>
  );
}

/** The chances of the score, once they are asked for. */
function ScoreChances({ state }: { readonly state: PlanState }) {
  const { scores, shot } = { scores: state.scores.value, shot: state.shot.value };
  if (shot === undefined) return undefined;
  if (scores === undefined)
    return (
      <button type="button" class="link" onClick={() => void state.showScores()}>
        {WORDS.seeScores}
      </button>
    );
  const lines =
    scores === 'asked' ? [WORDS.playing] : scores === 'unknown' ? [WORDS.noScores] : scoresWords(shot, scores);
  return (
    <div role="status">
      {lines.map((line) => (
        <p key={line} class="small">
          {line}
        </p>
      ))}
    </div>
  );
}
