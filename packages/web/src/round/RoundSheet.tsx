import { hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { strokesWords } from '../words.ts';
import type { Row, RoundState } from './state.ts';
import { pinOf } from './typed.ts';
import { countsWords, dayOf, flagOf, hundredth, longWords, planOf, ROUND, totalWords } from './words.ts';

/** The sheet: whose it is and for which day, a line a hole, and the round. It prints on one page. */
export function RoundSheet({ state }: { readonly state: RoundState }) {
  const kept = state.opened.value;
  const day = kept?.day ?? { windMps: state.wind.value?.speedMps ?? 0, windFromDeg: state.wind.value?.fromDeg ?? 0 };
  const rows = state.rows.value;
  const scores = rows.flatMap((row) => (row.scores === undefined ? [] : [row.scores]));
  const total = state.total.value;
  const { columns } = ROUND;
  return (
    <section class="round-sheet" aria-label={ROUND.heading}>
      <div class="round-title">
        <p>
          <b>{state.ground.value.course}</b> {state.player.value.name}
        </p>
        <p>{dayOf(kept?.date ?? state.date.value, day, units.value)}</p>
      </div>
      <table class="listing">
        <thead>
          <tr>
            <th scope="col">{columns.hole}</th>
            <th scope="col" class="n">
              {columns.par}
            </th>
            <th scope="col" class="n long">
              {columns.length}
            </th>
            {kept === undefined ? (
              <th scope="col" class="pin">
                {columns.flag}
              </th>
            ) : undefined}
            <th scope="col">{columns.line}</th>
            <th scope="col" class="n">
              {columns.strokes}
            </th>
            <th scope="col" class="n chance">
              {columns.parOrBetter} <small>{ROUND.inHundred}</small>
            </th>
            <th scope="col" class="n chance">
              {columns.doubleOrWorse} <small>{ROUND.inHundred}</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Line key={row.hole} row={row} state={state} pins={kept === undefined} />
          ))}
        </tbody>
      </table>
      {total === undefined ? undefined : (
        <p class="round-total">
          <b>{ROUND.round}</b> <span data-figure="round">{totalWords(total)}</span>{' '}
          {scores.length === rows.length ? countsWords(scores) : undefined}
        </p>
      )}
    </section>
  );
}

function Line({ row, state, pins }: { readonly row: Row; readonly state: RoundState; readonly pins: boolean }) {
  const { hole, par, lengthM, line, expectedStrokes, scores, instead } = row;
  const ground = state.ground.value;
  const { columns } = ROUND;
  return (
    <tr data-hole={hole}>
      <th scope="row">
        <a href={hrefOf('plan', state.player.value.id, { ground: ground.id, hole })} title={planOf(hole)}>
          {hole}
        </a>
      </th>
      <td class="n par" data-label={columns.par}>
        {par}
      </td>
      <td class="n long" data-label={columns.length}>
        {longWords(lengthM, units.value)}
      </td>
      {pins ? (
        <td class="pin">
          <Pin hole={hole} state={state} />
        </td>
      ) : undefined}
      <td class="line">{line ?? <i>{instead}</i>}</td>
      <td class="n strokes-n" data-label={columns.strokes}>
        {expectedStrokes === undefined ? '' : strokesWords(expectedStrokes)}
      </td>
      <td class="n chance" data-label={columns.parOrBetter}>
        {hundredth(scores?.parOrBetter)}
      </td>
      <td class="n chance" data-label={columns.doubleOrWorse}>
        {hundredth(scores?.doubleOrWorse)}
      </td>
    </tr>
  );
}

function Pin({ hole, state }: { readonly hole: string; readonly state: RoundState }) {
  const typed = state.flags.value[hole] ?? '';
  const wrong = pinOf(typed) === undefined;
  const next = (e: KeyboardEvent): void => {
    const step = e.key === 'Enter' || e.key === 'ArrowDown' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    e.preventDefault();
    const all = [...document.querySelectorAll<HTMLInputElement>('.pin input')];
    all[all.indexOf(e.currentTarget as HTMLInputElement) + step]?.focus();
  };
  return (
    <>
      <input
        type="text"
        aria-label={flagOf(hole)}
        aria-invalid={wrong}
        autocomplete="off"
        maxLength={12}
        value={typed}
        onInput={(e) => state.setFlag(hole, e.currentTarget.value)}
        onKeyDown={next}
      />
      {wrong ? (
        <span class="wrong" role="alert">
          {ROUND.badFlag}
        </span>
      ) : undefined}
    </>
  );
}
