import { Drop } from '../parts/Drop.tsx';
import { Says, Wrong } from '../parts/Says.tsx';
import { Head } from '../shell/Head.tsx';
import { hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { Approaches } from './Approaches.tsx';
import { Claims } from './Claims.tsx';
import { ClubSeen } from './ClubSeen.tsx';
import { Ladder } from './Ladder.tsx';
import { Offered } from './Offered.tsx';
import type { CarriesState } from './state.ts';
import { CARRIES, sessionWords, sparedWords, takesBackWords, whoseWords } from './words.ts';

const TABLES = '.csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain';

/** One player's carries: the ladder, and where its balls come from. */
export function CarriesPage({ state }: { readonly state: CarriesState }) {
  const { profile, ladder, offered } = state;
  const body = profile.value?.body;
  const files = offered.value.map((file, i) => <Offered key={`${i} ${file.file.name}`} state={state} offered={file} />);
  const drop = <Drop words={CARRIES} accept={TABLES} many take={(dropped) => state.offer(dropped)} />;
  const empty = ladder.value !== undefined && state.rungs.value.length === 0;
  return (
    <>
      <Head>
        {body === undefined ? undefined : (
          <>
            {body.name} <span class="small">{whoseWords(ladder.value?.balls ?? [])}</span>
          </>
        )}
      </Head>
      <main class="page two">
        <section>
          <h1>{CARRIES.title}</h1>
          <p class="lead">{CARRIES.lead(units.value)}</p>
          {body?.sparedSince === undefined ? undefined : <p class="caution">{sparedWords(body.sparedSince)}</p>}
          <Wrong fault={state.fault} />
          <Says done={state.done} />
          <p class={state.fitting.value === undefined ? 'unseen' : 'said'} role="status">
            {state.fitting.value}
          </p>
          {state.stale.value && state.fitting.value === undefined ? (
            <div class="row">
              <button type="button" class="act first" onClick={() => void state.fit()}>
                {CARRIES.fit}
              </button>
            </div>
          ) : undefined}
          {files}
          {empty && offered.value.length === 0 ? (
            <div class="nothing">
              <p>{CARRIES.none}</p>
              <p>{CARRIES.noneWhy}</p>
            </div>
          ) : undefined}
          {ladder.value === undefined ? <p class="small">{CARRIES.fetching}</p> : undefined}
          {state.rungs.value.length === 0 ? undefined : (
            <>
              <Ladder state={state} />
              <div class="row">
                <a class="act" href={hrefOf('plan', state.owner)}>
                  {CARRIES.plan}
                </a>
              </div>
            </>
          )}
        </section>
        <section class="aside">
          <ClubSeen state={state} />
          <h2 class="next">{CARRIES.hit}</h2>
          <p class="small">{CARRIES.hitWhy}</p>
          <div class="row">
            <a class="act" href={hrefOf('session', state.owner)}>
              {CARRIES.hitSession}
            </a>
          </div>
          <h2 class="next">{CARRIES.files}</h2>
          {drop}
          <h3>{CARRIES.typed}</h3>
          {profile.value === undefined ? undefined : (
            <Claims key={`${profile.value.id} ${units.value}`} state={state} clubs={profile.value.body.clubs} />
          )}
          <Approaches key={`marks ${units.value}`} state={state} />
          <h3>{CARRIES.sessions}</h3>
          <Sessions state={state} />
        </section>
      </main>
    </>
  );
}

function Sessions({ state }: { readonly state: CarriesState }) {
  const balls = Map.groupBy(state.ladder.value?.balls ?? [], (ball) => ball.session);
  const { value: sessions } = state.sessions;
  if (sessions.length === 0) return <p class="small">{CARRIES.noSessions}</p>;
  return (
    <ul class="notes">
      {sessions.map((session) => (
        <li key={session.id}>
          <p>{sessionWords(session.body.date, balls.get(session.id)?.length ?? 0)}</p>
          <p class="small">{session.body.source?.file ?? session.body.where ?? ''}</p>
          <button
            type="button"
            class="link"
            aria-label={takesBackWords(session.body.date)}
            onClick={() => void state.takeBack(session)}
          >
            {CARRIES.takeBack}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The page without a player: it says what to do first. */
export const NobodysCarries = () => (
  <>
    <Head />
    <main class="page">
      <h1>{CARRIES.title}</h1>
      <div class="nothing">
        <p>{CARRIES.nobody}</p>
        <p>{CARRIES.nobodyWhy}</p>
        <div class="row">
          <a class="act first" href={hrefOf('players', undefined)}>
            {CARRIES.toPlayers}
          </a>
        </div>
      </div>
    </main>
  </>
);
