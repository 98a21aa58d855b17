import { wholeLength } from '@leeway/engine';
import { units } from '../shell/remembered.ts';
import { LadderChart } from './LadderChart.tsx';
import type { Rung } from './rungs.ts';
import type { CarriesState } from './state.ts';
import { CARRIES, clubWords, gapWords, neededWords, sureWords } from './words.ts';

const HOW: { readonly [F in Rung['from']]: string } = {
  fit: '',
  belief: CARRIES.believed,
  balls: CARRIES.notFitted,
  claim: CARRIES.claimedOnly,
};

/** The ladder as a table, and its gaps in words. */
export function Ladder({ state }: { readonly state: CarriesState }) {
  const unit = units.value;
  const { columns } = CARRIES;
  const length = (m: number | undefined): string => (m === undefined ? '' : String(wholeLength(m, unit)));
  const gaps = state.ladder.value?.fitted?.ladder?.gaps ?? [];
  return (
    <>
      <LadderChart state={state} />
      <div class="scrolls" role="region" aria-label={CARRIES.table} tabIndex={0}>
        <table class="listing ladder">
          <caption class="unseen">{CARRIES.table}</caption>
          <thead>
            <tr>
              <th scope="col">{columns.club}</th>
              {[columns.carry, columns.sure, columns.eight, columns.mishits, columns.balls, columns.claimed].map(
                (name) => (
                  <th key={name} scope="col" class="n">
                    {name}
                  </th>
                ),
              )}
              <th scope="col" class="n">
                {columns.needed}
              </th>
            </tr>
          </thead>
          <tbody>
            {state.rungs.value.map((rung) => (
              <tr
                key={`${rung.club} ${rung.swing}`}
                data-from={rung.from}
                data-chosen={rung.balls > 0 && rung === state.chosenRung.value}
              >
                <th scope="row">
                  {rung.balls === 0 ? (
                    clubWords(rung)
                  ) : (
                    <button
                      type="button"
                      class="link name"
                      aria-pressed={rung === state.chosenRung.value}
                      onClick={() => (state.chosen.value = rung)}
                    >
                      {clubWords(rung)}
                    </button>
                  )}
                  {HOW[rung.from] === '' ? undefined : <span class="small"> {HOW[rung.from]}</span>}
                </th>
                <td class="n">
                  <b>{length(rung.carryM)}</b>
                </td>
                <td class="n">{sureWords(rung.seM, unit)}</td>
                <td class="n">{length(rung.eightInTenM)}</td>
                <td class="n">{rung.mishitShare === undefined ? '' : Math.round(100 * rung.mishitShare)}</td>
                <td class="n">{rung.balls}</td>
                <td class="n">{length(rung.claimedM)}</td>
                <td class="n">{neededWords(rung, unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="small">{CARRIES.neededNote}</p>
      {state.ladder.value?.fitted?.ladder === undefined ? undefined : (
        <section>
          <h2 class="part">{CARRIES.gaps}</h2>
          {gaps.length === 0 ? <p>{CARRIES.noGaps}</p> : undefined}
          <ul class="noticed">
            {gaps.map((gap) => (
              <li key={gap.fromM}>
                <b>{gapWords(gap.fromM, gap.toM, unit)}</b> {gap.ways.join('; ')}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
