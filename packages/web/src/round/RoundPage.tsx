import { Choose, Field } from '../parts/Field.tsx';
import { Wrong } from '../parts/Says.tsx';
import { Head } from '../shell/Head.tsx';
import { hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { isKept } from '../state/own.ts';
import { KeptRounds } from './KeptRounds.tsx';
import { RoundSheet } from './RoundSheet.tsx';
import type { RoundState } from './state.ts';
import { fromOf, speedOf } from './typed.ts';
import { progressWords, ROUND, windUnit } from './words.ts';

/** The round plan: the day above, a line a hole below, and what is kept. */
export function RoundPage({ state }: { readonly state: RoundState }) {
  const { ground, player } = { ground: state.ground.value, player: state.player.value };
  return (
    <>
      <Head>{player.name}</Head>
      <main class="page round">
        <h1>{ROUND.heading}</h1>
        <p class="lead">
          {ROUND.lead} <a href={hrefOf('plan', player.id, { ground: ground.id })}>{ROUND.backToPlan}</a>
        </p>
        <Wrong fault={state.fault} />
        {state.opened.value === undefined ? <Day state={state} /> : undefined}
        <RoundSheet state={state} />
        <Acts state={state} />
        <KeptRounds state={state} />
        <p class="small care">{ROUND.care}</p>
      </main>
    </>
  );
}

function Day({ state }: { readonly state: RoundState }) {
  const { shelf, ground, player, date, speed, from } = state;
  const planned = state.planned.value;
  const running = planned?.running === true;
  return (
    <form
      class="day"
      onSubmit={(e) => {
        e.preventDefault();
        void state.plan();
      }}
    >
      <div class="fields">
        <Choose
          label={ROUND.course}
          value={ground.value.id}
          options={shelf.grounds.map(({ id, course }) => [id, course])}
          set={(id) => state.choose({ ground: id })}
        />
        <Choose
          label={ROUND.player}
          value={player.value.id}
          options={shelf.players.map(({ id, name }) => [id, name])}
          set={(id) => state.choose({ player: id })}
        />
        <Field label={ROUND.date} kind="date" value={date.value} set={(value) => (date.value = value)} />
        <Field
          label={ROUND.wind}
          unit={windUnit(units.value)}
          kind="number"
          value={speed.value}
          wrong={speedOf(speed.value, units.value) === undefined ? ROUND.badSpeed : undefined}
          set={(value) => (speed.value = value)}
        />
        <Field
          label={ROUND.windFrom}
          unit={ROUND.windFromUnit}
          value={from.value}
          wrong={fromOf(from.value) === undefined ? ROUND.badFrom : undefined}
          set={(value) => (from.value = value)}
        />
      </div>
      <p class="small">{ROUND.flagsHelp}</p>
      <div class="acts">
        <button type="submit" class="act first" disabled={running || !state.mayPlan.value}>
          {planned === undefined ? ROUND.plan : ROUND.again}
        </button>
        {running ? (
          <button type="button" class="act" onClick={() => state.stop()}>
            {ROUND.stop}
          </button>
        ) : undefined}
        <p role="status">
          {planned === undefined
            ? ''
            : state.stale.value
              ? ROUND.stale
              : progressWords(planned.answers.size, ground.value.holes.length)}
        </p>
      </div>
    </form>
  );
}

function Acts({ state }: { readonly state: RoundState }) {
  const opened = state.opened.value !== undefined;
  if (!opened && !state.whole.value) return <p role="status">{state.said}</p>;
  const own = isKept(state.player.value);
  return (
    <>
      <div class="acts">
        {opened ? (
          <button type="button" class="act" onClick={() => (state.opened.value = undefined)}>
            {ROUND.close}
          </button>
        ) : (
          <button type="button" class="act first" disabled={!own} onClick={() => void state.keep()}>
            {ROUND.keep}
          </button>
        )}
        <button type="button" class="act" onClick={() => print()}>
          {ROUND.print}
        </button>
      </div>
      <p role="status">{state.said}</p>
    </>
  );
}
