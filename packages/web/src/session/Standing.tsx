import { Choose } from '../parts/Field.tsx';
import { wholeLength } from '@leeway/engine';
import { units } from '../shell/remembered.ts';
import { sameOption } from './calls.ts';
import type { SessionState } from './state.ts';
import {
  ballRow,
  clubWords,
  countWords,
  moreWords,
  othersWords,
  SESSION,
  setUpWords,
  sideShort,
  stopWords,
} from './words.ts';

const SHOWN = 10;

/** What was hit, how many balls are wanted yet, and when to stop. */
export function Standing({ state }: { readonly state: SessionState }) {
  const [log, present, unit] = [state.log.value, state.present.value, units.value];
  if (log === undefined || present === undefined) return undefined;
  const { setUp, balls } = log;
  const { most, withinM } = setUp;
  const needs = setUp.options.flatMap((o) => {
    const toGo = state.toGo(o);
    return toGo === undefined || toGo.more === 0 || sameOption(o, present) ? [] : [[o, toGo.more] as const];
  });
  const here = state.toGo(present);
  const choices = setUp.options.map((o, i) => [String(i), clubWords(o)] as const);
  return (
    <>
      <LastTen state={state} />
      <h2 class="run-in">{SESSION.more}</h2>
      <p>{here === undefined ? '' : moreWords(present, here, withinM !== undefined, unit)}</p>
      {needs.length === 0 ? undefined : <p class="small">{othersWords(needs.toSorted((a, b) => b[1] - a[1]))}</p>}
      <h2 class="run-in">{countWords(balls.length, most)}</h2>
      <progress
        class="so-far"
        max={most}
        value={Math.min(most, balls.length)}
        aria-label={countWords(balls.length, most)}
      />
      <p>
        {stopWords(balls.length, most, state.tiring.value)} {SESSION.pain}
      </p>
      <Choose
        label={SESSION.club}
        value={String(setUp.options.findIndex((o) => state.own.value !== undefined && sameOption(o, state.own.value)))}
        options={[['-1', SESSION.asCalled], ...choices]}
        set={(i) => (state.own.value = setUp.options[Number(i)])}
      />
      <div class="row">
        <button type="button" class="act" disabled={state.ending.value} onClick={() => void state.end()}>
          {SESSION.end}
        </button>
        <button type="button" class="link" onClick={() => (state.settingUp.value = true)}>
          {SESSION.correct}
        </button>
      </div>
      <p class="small" role="status">
        {state.ending.value ? SESSION.ending : ''}
      </p>
      <p class="small">{setUpWords(setUp, unit)}</p>
    </>
  );
}

function LastTen({ state }: { readonly state: SessionState }) {
  const balls = state.balls.value;
  const first = Math.max(0, balls.length - SHOWN);
  const { lastColumns } = SESSION;
  const rows = balls.slice(first).map((ball, i) => ({ ball, n: first + i + 1 }));
  return (
    <table class="listing last">
      <caption class="unseen">{SESSION.last}</caption>
      <thead>
        <tr>
          <th scope="col">{SESSION.last}</th>
          <th scope="col" class="n">
            {lastColumns.carry}
          </th>
          <th scope="col" class="n">
            {lastColumns.side}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.length === 0 ? (
          <tr>
            <td colSpan={3} class="small">
              {SESSION.noBalls}
            </td>
          </tr>
        ) : undefined}
        {rows.toReversed().map(({ ball, n }) => (
          <tr key={ball.id}>
            <td>
              {ballRow(n, ball)} <span class="small">{ball.club}</span>
            </td>
            <td class="n">
              <b>{wholeLength(ball.carryM, units.value)}</b>
            </td>
            <td class="n">{sideShort(ball.sideM, units.value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
