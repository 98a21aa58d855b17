import { useSignal } from '@preact/signals';
import { Choose, Field } from '../parts/Field.tsx';
import { Keys } from '../parts/Keys.tsx';
import { go, hrefOf, player } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { Drawn } from './Drawn.tsx';
import type { GroundState } from './state.ts';
import { emptyHazard, type TypedHazard, type TypedHole } from './typed.ts';
import { faultLine, GROUND, hazardField, holeKey } from './words.ts';

const KINDS = Object.entries(GROUND.kinds);

/** A hole typed line by line, drawn as it grows. */
export function Numbers({ state }: { readonly state: GroundState }) {
  const { fields } = GROUND;
  const unit = units.value;
  const typed = state.typed.value;
  const field = (key: keyof Omit<TypedHole, 'hazards'>, of?: string) => (
    <Field
      label={fields[key]}
      value={typed[key]}
      set={(value) => state.set({ [key]: value })}
      kind={key === 'hole' || key === 'name' ? 'text' : 'number'}
      {...(of === undefined ? {} : { unit: of })}
    />
  );
  const keep = async (e: Event, plan: boolean): Promise<void> => {
    e.preventDefault();
    const kept = await state.keep();
    if (kept !== undefined && plan) go(hrefOf('plan', player.value, { ground: kept.course, hole: kept.hole }));
  };
  const refused = (state.seen.value?.faults ?? []).filter(({ level }) => level === 'refused');
  const begun = typed.length.trim() !== '';
  return (
    <form onSubmit={(e) => void keep(e, true)} noValidate>
      <h2>{GROUND.newHole}</h2>
      <p class="small">{GROUND.numbersLead}</p>
      {state.others.value.length === 0 ? undefined : (
        <div class="row" role="group" aria-label={GROUND.holesOf}>
          {state.others.value.map((hole) => (
            <button
              key={hole.hole}
              type="button"
              class="act"
              aria-pressed={hole.hole === typed.hole}
              aria-label={holeKey(hole.hole)}
              onClick={() => state.takeUp(hole)}
            >
              {hole.hole}
            </button>
          ))}
          <button type="button" class="link" onClick={() => state.another()}>
            {GROUND.another}
          </button>
        </div>
      )}
      <div class="typing">
        <div>
          <div class="fields">
            <Field label={fields.course} value={state.name.value} set={(v) => (state.name.value = v)} />
            {field('hole')}
            {field('length', unit)}
            {field('par', GROUND.parUnit)}
          </div>
          <details>
            <summary>{GROUND.more2}</summary>
            <div class="fields">
              {field('turnAt', unit)}
              {field('turnBy', GROUND.degreesRight)}
              {field('fairway', unit)}
              {field('depth', unit)}
              {field('width', unit)}
              {field('angle', GROUND.degreesRight)}
              {field('bearing', GROUND.degrees)}
              {field('name')}
            </div>
          </details>
          <Hazards state={state} />
          <div role="alert">
            <ul class="noticed">
              {refused.map((fault, i) => (
                <li key={i}>{faultLine(fault)}</li>
              ))}
              {begun && state.numbers.value === undefined ? <li>{GROUND.badFigure}</li> : undefined}
            </ul>
          </div>
          <div class="row">
            <button type="submit" class="act first" disabled={state.numbers.value === undefined}>
              {GROUND.keepPlan}
            </button>
            <button
              type="button"
              class="act"
              disabled={state.numbers.value === undefined}
              onClick={(e) => void keep(e, false)}
            >
              {GROUND.keep}
            </button>
          </div>
        </div>
        <Drawn state={state} />
      </div>
    </form>
  );
}

function Hazards({ state }: { readonly state: GroundState }) {
  const { hazardColumns } = GROUND;
  const unit = units.value;
  const { hazards } = state.typed.value;
  const added = useSignal(-1);
  const set = (i: number, change: Partial<TypedHazard>): void => {
    const before = hazards[i];
    if (before !== undefined) state.set({ hazards: hazards.with(i, { ...before, ...change }) });
  };
  return (
    <section>
      <h3>{GROUND.hazards}</h3>
      {hazards.length === 0 ? <p class="small">{GROUND.noHazards}</p> : undefined}
      {hazards.map((hazard, i) => (
        <fieldset key={i} class="hazard">
          <legend class="unseen">{hazardField(i, GROUND.hazards)}</legend>
          <Choose
            label={hazardColumns.kind}
            value={hazard.kind}
            options={KINDS}
            focus={i === added.value}
            set={(kind) => set(i, { kind: kind as TypedHazard['kind'] })}
          />
          <Field
            label={hazardColumns.reach}
            kind="number"
            unit={unit}
            value={hazard.reach}
            set={(reach) => set(i, { reach })}
          />
          <Field
            label={hazardColumns.carry}
            kind="number"
            unit={unit}
            value={hazard.carry}
            set={(carry) => set(i, { carry })}
          />
          <Keys
            name={`side-${i}`}
            legend={hazardColumns.side}
            of={GROUND.sides}
            value={hazard.side}
            choose={(side) => set(i, { side })}
          />
          {hazard.side === 'across' ? undefined : (
            <Field
              label={hazardColumns.off}
              kind="number"
              unit={unit}
              value={hazard.off}
              set={(off) => set(i, { off })}
            />
          )}
          <button
            type="button"
            class="link"
            aria-label={hazardField(i, GROUND.removeHazard)}
            onClick={() => state.set({ hazards: hazards.toSpliced(i, 1) })}
          >
            {GROUND.removeHazard}
          </button>
        </fieldset>
      ))}
      <div class="row">
        <button
          type="button"
          class="act"
          onClick={() => {
            added.value = hazards.length;
            state.set({ hazards: [...hazards, emptyHazard] });
          }}
        >
          {GROUND.addHazard}
        </button>
      </div>
    </section>
  );
}
