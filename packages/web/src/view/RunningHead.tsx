import { useSignal } from '@preact/signals';
import type { PlanState } from '../state/plan.ts';
import { holeName, phoneSubtitle, WORDS } from '../words.ts';
import { OneOf } from './OneOf.tsx';
import { holesRound, turnToGround } from '../state/holes.ts';
import { Pick } from './Pick.tsx';
import { holeAfter, holeBefore, holeOption } from '../words.ts';
import { Brand, Nav } from '../shell/Nav.tsx';
import { SHELL } from '../shell/words.ts';

/** The running head. On a phone the title stands here, and everything else behind a pull on it. */
export function RunningHead({ state }: { readonly state: PlanState }) {
  const { hole } = holesRound(state.open.value);
  const pulled = useSignal(false);
  return (
    <header class="head" data-pulled={pulled.value}>
      <Brand />
      {hole === undefined ? undefined : (
        <p class="title">
          <button
            type="button"
            aria-expanded={pulled.value}
            aria-controls="choices"
            onClick={() => (pulled.value = !pulled.value)}
          >
            <b class="figure">{hole.hole}</b> <i>{holeName(hole)}</i>
          </button>
          <span>{phoneSubtitle(hole.par, state.index.value)}</span>
        </p>
      )}
      <Nav />
      <Choices state={state} />
    </header>
  );
}

function Choices({ state }: { readonly state: PlanState }) {
  const { shelf } = state;
  const { ground, player, hole: number } = state.open.value;
  const { before, after } = holesRound(state.open.value);
  return (
    <section class="choices" id="choices" aria-label={WORDS.choices}>
      {shelf.grounds.length > 1 ? (
        <Pick
          label={WORDS.ground}
          value={ground.id}
          options={shelf.grounds.map(({ id, course }) => ({ value: id, words: course }))}
          choose={(id) => turnToGround(state, id)}
        />
      ) : (
        <span class="course">{ground.course}</span>
      )}
      <div class="turn">
        <button type="button" disabled={!before} onClick={() => before && state.turnTo({ hole: before.hole })}>
          <span aria-hidden="true">‹ {before?.hole}</span>
          <span class="unseen">{holeBefore(before?.hole ?? '')}</span>
        </button>
        <Pick
          label={WORDS.hole}
          value={number}
          options={ground.holes.map((h) => ({ value: h.hole, words: holeOption(h) }))}
          choose={(hole) => state.turnTo({ hole })}
        />
        <button type="button" disabled={!after} onClick={() => after && state.turnTo({ hole: after.hole })}>
          <span aria-hidden="true">{after?.hole} ›</span>
          <span class="unseen">{holeAfter(after?.hole ?? '')}</span>
        </button>
      </div>
      <Pick
        label={WORDS.player}
        value={player.id}
        options={shelf.players.map(({ id, name }) => ({ value: id, words: name }))}
        choose={(id) => {
          const next = shelf.players.find((p) => p.id === id);
          if (next !== undefined) state.turnTo({ player: next });
        }}
      />
      <OneOf
        name="units"
        legend={SHELL.units}
        of={SHELL.unitNames}
        value={state.units.value}
        choose={(units) => state.setUnits(units)}
      />
      <OneOf
        name="light"
        legend={SHELL.light}
        of={SHELL.lightNames}
        value={state.light.value}
        choose={(light) => (state.light.value = light)}
      />
    </section>
  );
}
