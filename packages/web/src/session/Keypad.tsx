import { useEffect, useRef } from 'preact/hooks';
import { units } from '../shell/remembered.ts';
import { figuresOf, withFigure } from './keyed.ts';
import type { SessionState } from './state.ts';
import { SESSION } from './words.ts';

const FIGURES = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];
const ZERO = '0';
type Place = 'carry' | 'side';

/** Carry and side as fields that take the keyboard, and the large keys that write in them. */
export function Keypad({ state }: { readonly state: SessionState }) {
  const { keyed, active } = state;
  const fields = { carry: useRef<HTMLInputElement>(null), side: useRef<HTMLInputElement>(null) };
  const goTo = (place: Place): void => {
    active.value = place;
    fields[place].current?.focus();
  };
  useEffect(() => fields.carry.current?.focus(), []);
  const write = (text: string, place: Place = active.peek()): void => {
    keyed.value = { ...keyed.peek(), [place]: text };
    state.wrong.value = undefined;
  };
  const figure = (one: string): void => write(withFigure(keyed.peek()[active.peek()], one));
  const handed = (which: 'left' | 'right'): void => {
    keyed.value = { ...keyed.peek(), hand: which };
    goTo('side');
  };
  const keep = (mishit: boolean): void => {
    state.keep(mishit);
    goTo(active.peek());
  };
  /** Letters act only while one of the two fields is written in. */
  const letter = (e: KeyboardEvent): void => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const act = { l: () => handed('left'), r: () => handed('right'), m: () => keep(true) }[e.key.toLowerCase()];
    if (act === undefined) return;
    e.preventDefault();
    act();
  };
  const field = (place: Place, note: string) => (
    <label class="keyed" data-active={active.value === place}>
      <input
        ref={fields[place]}
        inputMode="none"
        autocomplete="off"
        value={keyed.value[place]}
        size={3}
        aria-invalid={state.wrong.value !== undefined && active.value === place}
        onFocus={() => (active.value = place)}
        onKeyDown={letter}
        onInput={(e) => write((e.currentTarget.value = figuresOf(e.currentTarget.value)), place)}
      />
      <span class="note">{note}</span>
    </label>
  );
  const hand = (which: 'left' | 'right') => (
    <Key hand={which} pressed={active.value === 'side' && keyed.value.hand === which} act={() => handed(which)}>
      {SESSION.hands[which]}
    </Key>
  );
  return (
    <form
      class="keypad"
      noValidate
      onSubmit={(e) => {
        e.preventDefault();
        keep(false);
      }}
    >
      <div class="keyed-row">
        {field('carry', SESSION.carry(units.value))}
        {field('side', `${SESSION.hands[keyed.value.hand]} ${SESSION.side}`)}
      </div>
      <p class="small wrong" role="alert">
        {state.wrong.value}
      </p>
      <div class="keys" role="group" aria-label={SESSION.keypad}>
        {FIGURES.map((one) => (
          <Key key={one} act={() => figure(one)}>
            {one}
          </Key>
        ))}
        {hand('left')}
        <Key act={() => figure('0')}>{ZERO}</Key>
        {hand('right')}
      </div>
      <div class="second">
        <button type="button" class="act" onClick={() => keep(true)}>
          {SESSION.mishit}
        </button>
        <button type="button" class="act" onClick={() => write(keyed.peek()[active.peek()].slice(0, -1))}>
          {SESSION.rubOut}
        </button>
        <button type="button" class="act" disabled={state.balls.value.length === 0} onClick={() => state.undo()}>
          {SESSION.undo}
        </button>
      </div>
      <button type="submit" class="act first keep">
        {SESSION.keep}
      </button>
      <p class="small by-keys">{SESSION.keys}</p>
    </form>
  );
}

const Key = (props: {
  readonly children: string;
  readonly act: () => void;
  readonly pressed?: boolean;
  readonly hand?: 'left' | 'right';
}) => (
  <button type="button" class="key" data-hand={props.hand} aria-pressed={props.pressed} onClick={props.act}>
    {props.children}
  </button>
);
