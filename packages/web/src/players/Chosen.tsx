import type { ListedPlayer } from '@leeway/contract';
import { useSignal } from '@preact/signals';
import { Field, Lines } from '../parts/Field.tsx';
import { Tick } from '../parts/Tick.tsx';
import { today } from '../shell/api.ts';
import { hrefOf } from '../shell/place.ts';
import { dateWords } from '../shell/words.ts';
import { archived, type PlayersState, spared } from './state.ts';
import { aboutWords, PLAYERS, takesBackWords } from './words.ts';

/** The chosen player: what one goes on to, whether to spare them, notes by date, and the ways out. */
export function Chosen({ state, player }: { readonly state: PlayersState; readonly player: ListedPlayer }) {
  const { body, owner } = player.profile;
  const away = body.archived === true;
  return (
    <>
      <h2>{body.name}</h2>
      <p class="small">{aboutWords(body)}</p>
      <div class="row">
        <a class="act first" href={hrefOf('carries', owner)}>
          {PLAYERS.carries}
        </a>
        <a class="act" href={hrefOf('plan', owner)}>
          {PLAYERS.plan}
        </a>
        <button type="button" class="act" onClick={() => (state.form.value = 'edit')}>
          {PLAYERS.edit}
        </button>
      </div>
      <Tick
        label={PLAYERS.spare}
        means={PLAYERS.spareMeans}
        on={body.sparedSince !== undefined}
        set={(on) => void state.change((b) => spared(b, on), PLAYERS.kept)}
      />
      <Notes state={state} />
      <h3>{PLAYERS.archive}</h3>
      <div class="row">
        <button
          type="button"
          class="act"
          onClick={() => void state.change((b) => archived(b, !away), away ? PLAYERS.kept : PLAYERS.archived)}
        >
          {away ? PLAYERS.unarchive : PLAYERS.archive}
        </button>
        <a class="link" href={`/api/players/${owner}/record`} download>
          {PLAYERS.record}
        </a>
      </div>
      {state.erasing.value ? (
        <Erase state={state} />
      ) : (
        <div class="row">
          <button type="button" class="link" onClick={() => (state.erasing.value = true)}>
            {PLAYERS.erase}
          </button>
        </div>
      )}
    </>
  );
}

function Notes({ state }: { readonly state: PlayersState }) {
  const date = useSignal(today());
  const text = useSignal('');
  const add = (e: Event): void => {
    e.preventDefault();
    if (text.value.trim() === '') return;
    void state.addNote({ date: date.value, text: text.value.trim() });
    text.value = '';
  };
  return (
    <section>
      <h3>{PLAYERS.notes}</h3>
      {state.notes.value.length === 0 ? <p class="small">{PLAYERS.noNotes}</p> : undefined}
      <ul class="notes">
        {state.notes.value.map((note) => (
          <li key={note.id}>
            <p class="small">{dateWords(note.body.date)}</p>
            <p>{note.body.text}</p>
            <button
              type="button"
              class="link"
              aria-label={takesBackWords(note.body.date)}
              onClick={() => void state.takeBack(note)}
            >
              {PLAYERS.takeBack}
            </button>
          </li>
        ))}
      </ul>
      <form onSubmit={add}>
        <div class="fields one">
          <Field label={PLAYERS.noteDate} kind="date" value={date.value} set={(v) => (date.value = v)} />
          <Lines label={PLAYERS.note} value={text.value} set={(v) => (text.value = v)} />
        </div>
        <div class="row">
          <button type="submit" class="act">
            {PLAYERS.addNote}
          </button>
        </div>
      </form>
    </section>
  );
}

/** Asks first: the name must be written. */
function Erase({ state }: { readonly state: PlayersState }) {
  const name = useSignal('');
  const erase = (e: Event): void => {
    e.preventDefault();
    void state.erase(name.value.trim());
  };
  return (
    <form class="caution" onSubmit={erase}>
      <p>
        <b>{PLAYERS.eraseTitle}</b>
      </p>
      <p>{PLAYERS.eraseWhy}</p>
      <Field label={PLAYERS.eraseName} value={name.value} set={(v) => (name.value = v)} focus />
      <div class="row">
        <button type="submit" class="act" disabled={name.value.trim() === ''}>
          {PLAYERS.erase}
        </button>
        <button type="button" class="act" onClick={() => (state.erasing.value = false)}>
          {PLAYERS.cancel}
        </button>
      </div>
    </form>
  );
}
