import { useSignal } from '@preact/signals';
import { Choose, Field } from '../parts/Field.tsx';
import { Keys } from '../parts/Keys.tsx';
import { today } from '../shell/api.ts';
import { units } from '../shell/remembered.ts';
import { approachOf, type BadApproach, type End, type TypedApproach } from './approachTyped.ts';
import type { CarriesState } from './state.ts';
import { approachesWords, CARRIES, clubWords } from './words.ts';

const NONE: TypedApproach = {
  club: '',
  swing: 'full',
  flag: '',
  front: '',
  back: '',
  width: '',
  end: 'mark',
  beyond: '',
  depth: 'past',
  across: '',
  hand: 'right',
};

/** Pitch marks found on real greens, and the approaches that left none. */
export function Approaches({ state }: { readonly state: CarriesState }) {
  const typed = useSignal(NONE);
  const wrong = useSignal<BadApproach | undefined>(undefined);
  const { marks } = CARRIES;
  const set = (more: Partial<TypedApproach>): void => {
    typed.value = { ...typed.value, ...more };
    wrong.value = undefined;
  };
  const rungs = state.rungs.value;
  const keep = (e: Event): void => {
    e.preventDefault();
    const read = approachOf(typed.value, today(), units.value);
    if (typeof read === 'string') {
      wrong.value = read;
      return;
    }
    void state.keepApproach(read);
    // the next approach has another ball, and most often another club and hole
    typed.value = { ...NONE, club: typed.value.club, swing: typed.value.swing };
  };
  const { club, swing, flag, front, back, width, end, beyond, depth, across, hand } = typed.value;
  const chosen = rungs.findIndex((r) => r.club === club && r.swing === swing);
  const length = (name: 'flag' | 'front' | 'back' | 'width', value: string, bad: BadApproach) => (
    <Field
      label={marks[name]}
      kind="number"
      most={5}
      unit={units.value}
      value={value}
      wrong={wrong.value === bad && name !== 'back' && name !== 'width' ? marks.bad[bad] : undefined}
      set={(text) => set({ [name]: text })}
    />
  );
  if (rungs.length === 0) return undefined;
  return (
    <form onSubmit={keep} noValidate class="marks">
      <h3>{marks.title}</h3>
      <p class="small">{marks.why}</p>
      <div class="fields">
        <Choose
          label={marks.club}
          value={String(chosen)}
          options={[['-1', marks.noClub], ...rungs.map((r, i) => [String(i), clubWords(r)] as const)]}
          set={(i) => set({ club: rungs[Number(i)]?.club ?? '', swing: rungs[Number(i)]?.swing ?? 'full' })}
        />
        {length('flag', flag, 'flag')}
        {length('front', front, 'green')}
        {length('back', back, 'green')}
        {length('width', width, 'green')}
        <Choose
          label={marks.end}
          value={end}
          options={Object.entries(marks.ends)}
          set={(value) => set({ end: value as End })}
        />
        {end === 'mark' ? (
          <>
            <Field
              label={marks.beyond}
              kind="number"
              most={4}
              unit={units.value}
              value={beyond}
              wrong={wrong.value === 'mark' ? marks.bad.mark : undefined}
              set={(text) => set({ beyond: text })}
            />
            <Keys
              name="depth"
              legend={marks.depth}
              of={marks.depths}
              value={depth}
              choose={(value) => set({ depth: value })}
            />
            <Field
              label={marks.across}
              kind="number"
              most={4}
              unit={units.value}
              value={across}
              set={(text) => set({ across: text })}
            />
            <Keys
              name="hand"
              legend={marks.hand}
              of={marks.hands}
              value={hand}
              choose={(value) => set({ hand: value })}
            />
          </>
        ) : undefined}
      </div>
      {wrong.value === 'club' ? (
        <p class="small" role="alert">
          {marks.bad.club}
        </p>
      ) : undefined}
      <div class="row">
        <button type="submit" class="act">
          {marks.keep}
        </button>
        <span class="small">{approachesWords(state.approaches.value)}</span>
      </div>
    </form>
  );
}
