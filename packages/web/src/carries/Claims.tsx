import { useSignal } from '@preact/signals';
import type { Profile } from '@leeway/contract';
import { units } from '../shell/remembered.ts';
import { CLAIMED_SWINGS, clubsOf, readCarryM, type TypedClub, typedOf } from './claims.ts';
import type { CarriesState } from './state.ts';
import { CARRIES, carryOf, clubNumber, USUAL_CLUBS } from './words.ts';

const NO_CARRIES = { full: '', 'three-quarter': '', half: '' };
const usualBag = (): readonly TypedClub[] => USUAL_CLUBS.map((name) => ({ name, carries: NO_CARRIES }));

/** Carries typed from memory, a line a club. */
export function Claims({ state, clubs }: { readonly state: CarriesState; readonly clubs: Profile['clubs'] }) {
  const unit = units.value;
  const typed = useSignal(clubs === undefined || clubs.length === 0 ? usualBag() : typedOf(clubs, unit));
  const tried = useSignal(false);
  const set = (i: number, club: TypedClub): void => {
    typed.value = typed.value.with(i, club);
  };
  const keep = (e: Event): void => {
    e.preventDefault();
    tried.value = true;
    const read = clubsOf(typed.value, clubs ?? [], unit);
    if (read !== undefined) void state.keepClubs(read);
  };
  const wrong = tried.value && clubsOf(typed.value, clubs ?? [], unit) === undefined;
  return (
    <form onSubmit={keep} noValidate>
      <p class="small">{CARRIES.typedWhy}</p>
      <div class="scrolls" role="region" aria-label={CARRIES.typedTable} tabIndex={0}>
        <table class="listing typed">
          <caption class="unseen">{CARRIES.typedTable}</caption>
          <thead>
            <tr>
              <th scope="col">{CARRIES.typedColumns.club}</th>
              {CLAIMED_SWINGS.map((swing) => (
                <th key={swing} scope="col" class="n">
                  {CARRIES.typedColumns[swing]}, {unit}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {typed.value.map((club, i) => (
              <tr key={i}>
                <td>
                  <input
                    class="cell"
                    aria-label={clubNumber(i)}
                    value={club.name}
                    maxLength={80}
                    autocomplete="off"
                    onInput={(e) => set(i, { ...club, name: e.currentTarget.value })}
                  />
                </td>
                {CLAIMED_SWINGS.map((swing) => (
                  <td key={swing} class="n">
                    <input
                      class="cell n"
                      inputMode="decimal"
                      aria-label={carryOf(club.name || clubNumber(i), CARRIES.typedColumns[swing])}
                      aria-invalid={Number.isNaN(readCarryM(club.carries[swing], unit))}
                      value={club.carries[swing]}
                      maxLength={6}
                      autocomplete="off"
                      onInput={(e) => set(i, { ...club, carries: { ...club.carries, [swing]: e.currentTarget.value } })}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {wrong ? (
        <p class="small" role="alert">
          {CARRIES.badCarry(unit)}
        </p>
      ) : undefined}
      <div class="row">
        <button type="submit" class="act">
          {CARRIES.keepTyped}
        </button>
        <button
          type="button"
          class="link"
          onClick={() => (typed.value = [...typed.value, { name: '', carries: NO_CARRIES }])}
        >
          {CARRIES.moreClubs}
        </button>
      </div>
    </form>
  );
}
