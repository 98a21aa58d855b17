import { NobodysCarries } from '../carries/CarriesPage.tsx';
import { sparedWords } from '../carries/words.ts';
import { Wrong } from '../parts/Says.tsx';
import { Head } from '../shell/Head.tsx';
import { units } from '../shell/remembered.ts';
import { Keypad } from './Keypad.tsx';
import { Range } from './Range.tsx';
import { SetUpForm } from './SetUpForm.tsx';
import { Standing } from './Standing.tsx';
import type { SessionState } from './state.ts';
import { unsent } from './unsent.ts';
import { callWords, clubWords, refusedWords, SESSION, waitingWords, whoseSession } from './words.ts';

/** A session on the range: how it is set up, then ball by ball. */
export function SessionPage({ state }: { readonly state: SessionState }) {
  const body = state.profile.value?.body;
  if (state.fault.value !== undefined && body === undefined && state.log.value === undefined) return <NobodysCarries />;
  return (
    <>
      <Head>
        {body?.name} <span class="small">{whoseSession(state.balls.value.length)}</span>
      </Head>
      {state.settingUp.value || state.log.value === undefined ? (
        <main class="page">
          <h1>{SESSION.title}</h1>
          <p class="lead">{SESSION.lead}</p>
          {body?.sparedSince === undefined ? undefined : <p class="caution">{sparedWords(body.sparedSince)}</p>}
          <Wrong fault={state.fault} />
          {state.ladder.value === undefined && state.log.value === undefined ? undefined : (
            <SetUpForm key={units.value} state={state} />
          )}
          <Care />
        </main>
      ) : (
        <main class="page session">
          <div class="call">
            <Called state={state} />
          </div>
          <Range state={state} />
          <Keypad state={state} />
          <section class="standing">
            <Line state={state} />
            <Standing state={state} />
          </section>
          <Care />
        </main>
      )}
    </>
  );
}

function Called({ state }: { readonly state: SessionState }) {
  const [present, log] = [state.present.value, state.log.value];
  if (present === undefined || log === undefined) return undefined;
  return (
    <>
      <h1>{clubWords(present)}</h1>
      <p class="lead">{callWords(state.called.value, state.own.value !== undefined)}</p>
    </>
  );
}

/** What has not reached the server, and what it refuses. */
function Line({ state }: { readonly state: SessionState }) {
  const [waiting, refused] = [unsent.waiting.value, unsent.refused.value];
  return (
    <>
      <Wrong fault={state.fault} />
      <p role="status" class={waiting === 0 && refused === undefined && unsent.written.value ? 'unseen' : 'small'}>
        {refused === undefined ? (waiting === 0 ? '' : waitingWords(waiting)) : refusedWords(refused)}{' '}
        {unsent.written.value ? '' : SESSION.notWritten}
      </p>
      <p role="status" class="unseen">
        {state.said.value}
      </p>
    </>
  );
}

/** Nobody ahead, and how the balls are hit. It is in view at every ball. */
function Care() {
  return (
    <p class="caution care">
      <span>
        <b>{SESSION.look}</b> {SESSION.lookWhy}
      </span>
    </p>
  );
}
