import { Says, Wrong } from '../parts/Says.tsx';
import { Tick } from '../parts/Tick.tsx';
import { Head } from '../shell/Head.tsx';
import { go, hrefOf } from '../shell/place.ts';
import { SHELL } from '../shell/words.ts';
import { Chosen } from './Chosen.tsx';
import { ProfileForm } from './ProfileForm.tsx';
import type { PlayersState } from './state.ts';
import { aboutWords, changedWords, dueWords, PLAYERS } from './words.ts';

/** The coach's list, and the chosen player beside it. */
export function PlayersPage({ state }: { readonly state: PlayersState }) {
  const { players, chosen, form } = state;
  const add = (
    <button
      type="button"
      class="act first"
      onClick={() => {
        go(hrefOf('players', undefined), 'replace');
        state.chosenId.value = undefined;
        state.form.value = 'new';
      }}
    >
      {PLAYERS.add}
    </button>
  );
  const empty = players.value?.length === 0 && form.value !== 'new';
  return (
    <>
      <Head />
      <main class="page two">
        <section>
          <h1>{SHELL.pageNames.players}</h1>
          <p class="lead">{PLAYERS.lead}</p>
          <Wrong fault={state.fault} />
          <Says done={state.done} />
          {state.noStore.value ? (
            <div class="nothing">
              <p>{PLAYERS.noStore}</p>
            </div>
          ) : empty ? (
            <div class="nothing">
              <p>{PLAYERS.none}</p>
              <p>{PLAYERS.noneWhy}</p>
              <div class="row">{add}</div>
            </div>
          ) : players.value === undefined ? (
            <p class="small">{PLAYERS.fetching}</p>
          ) : (
            <>
              <List state={state} />
              <div class="row">{form.value === 'new' ? undefined : add}</div>
              {state.archivedCount.value === 0 ? undefined : (
                <Tick
                  label={PLAYERS.showArchived}
                  means={PLAYERS.showArchivedMeans}
                  on={state.withArchived.value}
                  set={(on) => (state.withArchived.value = on)}
                />
              )}
            </>
          )}
        </section>
        <section class="aside">
          {form.value !== undefined ? (
            <ProfileForm
              key={`${form.value} ${chosen.value?.profile.id ?? ''}`}
              state={state}
              from={form.value === 'edit' ? chosen.value?.profile.body : undefined}
            />
          ) : chosen.value === undefined ? (
            <p class="small">{empty ? '' : PLAYERS.choose}</p>
          ) : (
            <Chosen key={chosen.value.profile.owner} state={state} player={chosen.value} />
          )}
        </section>
      </main>
    </>
  );
}

function List({ state }: { readonly state: PlayersState }) {
  const now = Date.now();
  if (state.shown.value.length === 0) return undefined;
  return (
    <table class="listing">
      <caption class="unseen">{PLAYERS.list}</caption>
      <thead>
        <tr>
          <th scope="col">{PLAYERS.columns.name}</th>
          <th scope="col">{PLAYERS.columns.changed}</th>
          <th scope="col">{PLAYERS.columns.due}</th>
        </tr>
      </thead>
      <tbody>
        {state.shown.value.map((player) => {
          const { owner, body } = player.profile;
          return (
            <tr key={owner} data-chosen={owner === state.chosenId.value}>
              <th scope="row">
                <a
                  class="link name"
                  href={hrefOf('players', owner)}
                  aria-current={owner === state.chosenId.value ? 'true' : undefined}
                >
                  {body.name}
                </a>
                <span class="small"> {aboutWords(body)}</span>
              </th>
              <td>{changedWords(player)}</td>
              <td>{dueWords(player, now)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
