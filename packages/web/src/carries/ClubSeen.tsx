import { useComputed, useSignal } from '@preact/signals';
import { Choose } from '../parts/Field.tsx';
import { Painted } from '../parts/Painted.tsx';
import { dateWords } from '../shell/words.ts';
import { units } from '../shell/remembered.ts';
import { modelOf } from './modelOf.ts';
import { changeBetween, daysOf, drawnFromAbove, partsOfSwing, seenBalls } from './seen.ts';
import type { CarriesState } from './state.ts';
import { CARRIES, changeWords, clubWords, figuresLine, sidelessWords } from './words.ts';

/** The chosen club and swing from above, its figures in a line, and what changed between two days. */
export function ClubSeen({ state }: { readonly state: CarriesState }) {
  const before = useSignal('');
  const after = useSignal('');
  const rung = useComputed(() => state.chosenRung.value);
  const seen = useComputed(() => {
    const [of, file] = [rung.value, state.file.value];
    if (of === undefined) return [];
    return seenBalls(state.ladder.value?.balls ?? [], file === undefined ? undefined : modelOf(file), of);
  });
  const days = useComputed(() => {
    const all = daysOf(seen.value);
    const [from, to] = [before.value, after.value];
    return all.includes(from) && all.includes(to) && from !== to ? { before: from, after: to } : undefined;
  });
  const above = useComputed(() =>
    rung.value === undefined
      ? undefined
      : drawnFromAbove(
          clubWords(rung.value),
          units.value,
          seen.value,
          partsOfSwing(state.file.value, rung.value),
          days.value,
        ),
  );
  const of = rung.value;
  if (of === undefined || above.value === undefined || seen.value.length === 0) return undefined;
  const entry = state.entryOf(of);
  const mishits = seen.value.filter((b) => b.mishit).length;
  const sideless = seen.value.filter((b) => b.sideM === undefined).length;
  const options = daysOf(seen.value).map((date) => [date, dateWords(date)] as const);
  return (
    <section class="seen" aria-label={clubWords(of)}>
      <h2>{clubWords(of)}</h2>
      <p class="small">{figuresLine(of, entry, seen.value.length, mishits, units.value)}</p>
      <div class="above">
        <Painted above={above.value} />
      </div>
      <p class="small">
        {days.value !== undefined ? CARRIES.aboveTwo : entry === undefined ? CARRIES.aboveUnfitted : CARRIES.above}{' '}
        {sideless === 0 ? '' : sidelessWords(sideless)}
      </p>
      {options.length < 2 ? undefined : (
        <>
          <div class="fields">
            <Choose
              label={CARRIES.before}
              value={before.value}
              options={[['', CARRIES.noDay], ...options]}
              set={(date) => (before.value = date)}
            />
            <Choose
              label={CARRIES.after}
              value={after.value}
              options={[['', CARRIES.noDay], ...options]}
              set={(date) => (after.value = date)}
            />
          </div>
          <div role="status">
            {days.value === undefined
              ? undefined
              : changeWords(changeBetween(seen.value, days.value), units.value).map((line) => <p key={line}>{line}</p>)}
            {days.value === undefined ? undefined : <p class="small">{CARRIES.asMeasured}</p>}
          </div>
        </>
      )}
    </section>
  );
}
