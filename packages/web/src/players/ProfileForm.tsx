import type { Profile } from '@leeway/contract';
import { useSignal } from '@preact/signals';
import { Field } from '../parts/Field.tsx';
import { Keys } from '../parts/Keys.tsx';
import { Tick } from '../parts/Tick.tsx';
import type { PlayersState } from './state.ts';
import { indexText, PLAYERS, readIndex } from './words.ts';

/** Who a player is. Of a child less is asked. */
export function ProfileForm({ state, from }: { readonly state: PlayersState; readonly from: Profile | undefined }) {
  const name = useSignal(from?.name ?? '');
  const index = useSignal(from?.handicapIndex === undefined ? '' : indexText(from.handicapIndex));
  const hand = useSignal<keyof typeof PLAYERS.hands>(from?.hand ?? 'right');
  const sex = useSignal<keyof typeof PLAYERS.sexes>(from?.sex ?? 'unsaid');
  const minor = useSignal(from?.minor === true);
  const tried = useSignal(false);
  const handicapIndex = readIndex(index.value);
  const badIndex = index.value.trim() !== '' && handicapIndex === undefined;
  const badName = name.value.trim() === '';
  const submit = (e: Event): void => {
    e.preventDefault();
    tried.value = true;
    if (badName || badIndex) return;
    const { name: _n, handicapIndex: _i, hand: _h, sex: _s, minor: _m, ...rest } = from ?? { name: '' };
    void state.keep({
      ...rest,
      name: name.value.trim(),
      hand: hand.value,
      ...(handicapIndex === undefined ? {} : { handicapIndex }),
      ...(sex.value === 'unsaid' || minor.value ? {} : { sex: sex.value }),
      ...(minor.value ? { minor: true } : {}),
    });
  };
  return (
    <form onSubmit={submit} noValidate>
      <h2>{from === undefined ? PLAYERS.newPlayer : PLAYERS.edit}</h2>
      <div class="fields">
        <Field
          label={PLAYERS.fields.name}
          value={name.value}
          set={(v) => (name.value = v)}
          need
          focus
          wrong={tried.value && badName ? PLAYERS.needName : undefined}
        />
        <Field
          label={PLAYERS.fields.index}
          kind="number"
          value={index.value}
          set={(v) => (index.value = v)}
          wrong={badIndex && (tried.value || index.value.length > 2) ? PLAYERS.badIndex : undefined}
        />
        <Keys
          name="hand"
          legend={PLAYERS.fields.hand}
          of={PLAYERS.hands}
          value={hand.value}
          choose={(v) => (hand.value = v)}
        />
        {minor.value ? undefined : (
          <Keys
            name="sex"
            legend={PLAYERS.fields.sex}
            of={PLAYERS.sexes}
            value={sex.value}
            choose={(v) => (sex.value = v)}
          />
        )}
      </div>
      <Tick label={PLAYERS.minor} means={PLAYERS.minorMeans} on={minor.value} set={(on) => (minor.value = on)} />
      <div class="row">
        <button type="submit" class="act first">
          {PLAYERS.save}
        </button>
        <button type="button" class="act" onClick={() => (state.form.value = undefined)}>
          {PLAYERS.cancel}
        </button>
      </div>
    </form>
  );
}
