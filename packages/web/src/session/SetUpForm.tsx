import { SESSION_CAP, YARD_M } from '@leeway/engine';
import { useSignal } from '@preact/signals';
import { Choose, Field } from '../parts/Field.tsx';
import { Keys } from '../parts/Keys.tsx';
import { hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { type Option, sameOption } from './calls.ts';
import { type SetUp, type WindFrom, windMps } from './log.ts';
import { type SessionState, usualOptions } from './state.ts';
import { badMost, clubWords, SESSION } from './words.ts';

type Typed = Omit<SetUp, 'options' | 'most' | 'withinM'>;
const NEW: Typed = { target: '', surface: 'mat', ball: 'range', wind: 'calm', speed: '' };
const typedIn = ({ target, surface, ball, wind, speed }: Typed): Typed => ({ target, surface, ball, wind, speed });
const LEAST = 5;
const USUAL = 60;
const wholeOf = (text: string, least: number, most: number): number | undefined =>
  /^\d{1,3}$/.test(text.trim()) && Number(text) >= least && Number(text) <= most ? Number(text) : undefined;

/** Line, mat or turf, balls, wind, clubs and how many: before the first ball, and to correct it. */
export function SetUpForm({ state }: { readonly state: SessionState }) {
  const before = state.log.value?.setUp;
  const unit = units.value;
  const typed = useSignal(typedIn(before ?? NEW));
  const unitM = unit === 'yd' ? YARD_M : 1;
  const cap = SESSION_CAP[state.who.value];
  const most = useSignal(String(before?.most ?? Math.min(USUAL, cap)));
  const within = useSignal(before?.withinM === undefined ? '' : String(Math.round(before.withinM / unitM)));
  const chosen = useSignal<readonly Option[] | undefined>(before?.options);
  const tried = useSignal(false);
  const { hittable } = state;
  const all: readonly Option[] = [
    ...hittable.value,
    ...(before?.options ?? []).filter((o) => !hittable.value.some((h) => sameOption(h, o))),
  ];
  const options = chosen.value ?? usualOptions(hittable.value);
  const isChosen = (o: Option): boolean => options.some((c) => sameOption(c, o));
  const calmOrTold = windMps(typed.value, unit) !== undefined;
  const [balls, sure] = [wholeOf(most.value, LEAST, cap), wholeOf(within.value, 1, 20)];
  const sureOrEmpty = sure !== undefined || within.value.trim() === '';
  const begin = (e: Event): void => {
    e.preventDefault();
    tried.value = true;
    if (!calmOrTold || !sureOrEmpty || balls === undefined || options.length === 0) return;
    const inOrder = all.filter(isChosen).map(({ club, swing }) => ({ club, swing }));
    const asked = sure === undefined ? {} : { withinM: sure * unitM };
    state.begin({ ...typed.value, options: inOrder, most: balls, ...asked });
  };
  return (
    <form onSubmit={begin} noValidate>
      <h2 class="part">{before === undefined ? SESSION.setUp : SESSION.again}</h2>
      <div class="fields">
        <Field
          label={SESSION.target}
          value={typed.value.target}
          set={(target) => (typed.value = { ...typed.value, target })}
        />
        <Keys
          name="surface"
          legend={SESSION.surface}
          of={SESSION.surfaces}
          value={typed.value.surface}
          choose={(surface) => (typed.value = { ...typed.value, surface })}
        />
        <Keys
          name="ball"
          legend={SESSION.ball}
          of={SESSION.ballKinds}
          value={typed.value.ball}
          choose={(ball) => (typed.value = { ...typed.value, ball })}
        />
        <Choose
          label={SESSION.wind}
          value={typed.value.wind}
          options={Object.entries(SESSION.winds)}
          set={(wind) => (typed.value = { ...typed.value, wind: wind as WindFrom })}
        />
        {typed.value.wind === 'calm' ? undefined : (
          <Field
            label={SESSION.speed}
            kind="number"
            most={4}
            unit={SESSION.speedUnit(unit)}
            value={typed.value.speed}
            wrong={tried.value && !calmOrTold ? SESSION.badSpeed : undefined}
            set={(speed) => (typed.value = { ...typed.value, speed })}
          />
        )}
        <Field
          label={SESSION.most}
          kind="number"
          most={3}
          value={most.value}
          wrong={tried.value && balls === undefined ? badMost(cap) : undefined}
          set={(text) => (most.value = text)}
        />
        <Field
          label={SESSION.within}
          kind="number"
          most={2}
          unit={`± ${unit}`}
          value={within.value}
          wrong={tried.value && !sureOrEmpty ? SESSION.badWithin : undefined}
          set={(text) => (within.value = text)}
        />
      </div>
      <fieldset class="clubs">
        <legend>{SESSION.clubs}</legend>
        <p class="small">{SESSION.clubsWhy}</p>
        {all.length === 0 ? (
          <p>
            {SESSION.noBag} <a href={hrefOf('carries', state.owner)}>{SESSION.toCarries}</a>
          </p>
        ) : undefined}
        <div>
          {all.map((o) => (
            <label key={clubWords(o)}>
              <input
                type="checkbox"
                checked={isChosen(o)}
                onChange={() =>
                  (chosen.value = isChosen(o) ? options.filter((c) => !sameOption(c, o)) : [...options, o])
                }
              />
              {clubWords(o)}
            </label>
          ))}
        </div>
        {tried.value && options.length === 0 ? (
          <p class="small" role="alert">
            {SESSION.noClubs}
          </p>
        ) : undefined}
      </fieldset>
      <div class="row">
        <button type="submit" class="act first">
          {before === undefined ? SESSION.begin : SESSION.goOn}
        </button>
      </div>
    </form>
  );
}
