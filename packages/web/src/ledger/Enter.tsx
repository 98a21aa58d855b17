import type { HoleGround } from '@leeway/engine';
import { useRef } from 'preact/hooks';
import { Choose, Field } from '../parts/Field.tsx';
import { hrefOf, player } from '../shell/place.ts';
import { placedHole } from './guessed.ts';
import type { LedgerState } from './state.ts';
import { readTyped, scoreOf } from './typed.ts';
import { FINISH_WORDS, LEDGER, SIDE_WORDS, typedWords } from './words.ts';

/** A round from a paper card by keys: a line a hole, which goes on to the next when the hole is whole. */
export function Enter({ state }: { readonly state: LedgerState }) {
  const list = useRef<HTMLOListElement>(null);
  const { grounds, course, date } = state;
  if (grounds.value.length === 0)
    return (
      <div class="nothing">
        <p>{LEDGER.noCourse}</p>
        <p>
          <a href={hrefOf('ground', player.value)}>{LEDGER.toGround}</a>
        </p>
      </div>
    );
  const read = state.read.value;
  const whole = read.filter(({ typed }) => typed.whole);
  const next = (from: number): void => list.current?.querySelectorAll('input')[from + 1]?.focus();
  return (
    <form
      class="card"
      onSubmit={(e) => {
        e.preventDefault();
        void state.keep();
      }}
    >
      <p class="lead">{LEDGER.lead}</p>
      <div class="row">
        <Field label={LEDGER.date} kind="date" value={date.value} set={(to) => (date.value = to)} />
        <Choose
          label={LEDGER.course}
          value={course.value ?? ''}
          options={grounds.value.map((g) => [g.id, g.course] as const)}
          set={(id) => state.chooseCourse(id)}
        />
      </div>
      <Legend words={LEDGER.finishKeys} keys={Object.entries(FINISH_WORDS)} />
      <Legend words={LEDGER.clubKeys} keys={[...state.keys.value]} />
      <Legend words={LEDGER.sideKeys} keys={Object.entries(SIDE_WORDS)} />
      <ol class="holes" ref={list}>
        {read.map(({ ground, typed }, i) => (
          <li key={ground.hole}>
            <label>
              <b>{LEDGER.hole(ground.hole)}</b> <span class="small">{LEDGER.par(ground.par)}</span>
              <input
                type="text"
                autocomplete="off"
                autocapitalize="off"
                spellcheck={false}
                maxLength={60}
                value={state.typed.value[ground.hole] ?? ''}
                aria-invalid={typed.wrong !== undefined}
                onInput={(e) => {
                  state.type(ground.hole, e.currentTarget.value);
                  if (readTyped(e.currentTarget.value, state.keys.value).whole) next(i);
                }}
              />
            </label>
            <span class="score">{typed.whole ? scoreOf(typed) : ''}</span>
            <span class="small">{typedWords(typed, clubsOf(state, ground, typed))}</span>
          </li>
        ))}
      </ol>
      <p class="small">{LEDGER.guess}</p>
      <div class="row">
        <button type="submit" class="act first" disabled={whole.length === 0}>
          {LEDGER.keep}
        </button>
        <button type="button" class="act" onClick={() => (state.entering.value = false)}>
          {LEDGER.leave}
        </button>
        <p class="small" role="status">
          {LEDGER.total} {whole.reduce((sum, { typed }) => sum + scoreOf(typed), 0)}
        </p>
      </div>
    </form>
  );
}

/** The clubs that are taken for what was typed. */
const clubsOf = (state: LedgerState, ground: HoleGround, typed: ReturnType<typeof readTyped>) =>
  placedHole(ground, { ...typed, putts: 0 }, state.reaches.value).map(({ club }) => club);

const Legend = ({ words, keys }: { readonly words: string; readonly keys: readonly (readonly [string, string])[] }) => (
  <p class="legend">
    <i>{words}</i>
    {keys.map(([key, means]) => (
      <span key={key}>
        <kbd>{key}</kbd> {means}
      </span>
    ))}
  </p>
);
