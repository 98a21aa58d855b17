import type { PlanePoint } from '@leeway/engine';
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { PlanState } from '../state/plan.ts';
import { dayWords } from '../day/words.ts';
import { faultWords, headingWords, madeUpWords, plainHeading, WORDS } from '../words.ts';
import { Acts, Sure, Waits } from './Acts.tsx';
import { Behind } from './Behind.tsx';
import { BottomEdge } from './BottomEdge.tsx';
import { Hatches } from './Finishes.tsx';
import { StartClean } from './NothingToPlan.tsx';
import { Others, Why } from './Reasons.tsx';
import { RunningHead } from './RunningHead.tsx';
import { Sheet } from './Sheet.tsx';
import { ShotTabs } from './ShotTabs.tsx';
import { ShotWords } from './ShotWords.tsx';
import { late } from '../parts/late.tsx';
import { WindRow } from './WindRow.tsx';

const FirstPanel = late(() => import('../first/FirstPanel.tsx').then((m) => m.FirstPanel));
const Kept = late(() => import('../first/Kept.tsx').then((m) => m.Kept));

/** The Plan page: the chart of a shot, and the choice in words beside it. */
export function PlanPage({ state }: { readonly state: PlanState }) {
  const more = useSignal(false);
  const opened = useRef<HTMLDivElement>(null);
  useSignalEffect(() => {
    if (more.value) opened.current?.scrollIntoView({ block: 'start' });
    else if (scrollY > 0 && matchMedia('(max-width: 639px)').matches) scrollTo({ top: 0 });
  });
  const flagAt = useComputed(() => placeText(state.flag.value));
  const answeredFor = useComputed(() => placeText(state.answeredFor.value));
  const { plan, units, said } = state;
  const hidden = state.first.hidden.value;
  const attribution = state.hole.value?.attribution;
  const escape = (e: KeyboardEvent): void => {
    if (e.key === 'Escape') state.placing.value = undefined;
  };
  return (
    <div onKeyDown={escape}>
      <Hatches />
      <RunningHead state={state} />
      <main data-more={more.value} data-answer={state.answered} data-flag={flagAt} data-answered-for={answeredFor}>
        <h1 class="unseen">
          {plan.value === undefined ? WORDS.plan : (hidden ? plainHeading : headingWords)(plan.value, units.value)}
        </h1>
        <Sheet state={state} />
        <section class="words" aria-label={WORDS.choice}>
          <Fault state={state} />
          <ShotTabs state={state} />
          <div id="shot" role="tabpanel" aria-labelledby={`tab-${state.index.value}`}>
            {hidden && plan.value !== undefined ? (
              <FirstPanel state={state} />
            ) : (
              <>
                <ShotWords state={state} />
                <div class="more" id="more" ref={opened}>
                  <Why state={state} />
                  <Others state={state} />
                </div>
              </>
            )}
            <div class="below">
              <WindRow state={state} />
              <Acts state={state} />
              {hidden ? undefined : <Sure state={state} />}
            </div>
            <Waits state={state} />
            <Behind state={state} />
            {state.keeping.value && !hidden ? <Kept state={state} /> : undefined}
          </div>
        </section>
      </main>
      <footer class="foot small">
        <p>
          {dayWords(state.wind.value, units.value, plan.value?.heights)} {WORDS.safety}
        </p>
        <p>
          {attribution ?? madeUpWords(state.open.value)}{' '}
          {state.open.value.ground.kept === true ? undefined : <StartClean />}
        </p>
      </footer>
      <BottomEdge state={state} more={more} />
      <p class="unseen" aria-live="polite">
        {said.value}
      </p>
    </div>
  );
}

/** What went wrong, in one line, with what was kept and the way on. */
function Fault({ state }: { readonly state: PlanState }) {
  const { fault, plan } = state;
  if (fault.value === undefined) return undefined;
  return (
    <div class="fault">
      <p role="alert">{faultWords(fault.value, plan.value !== undefined)}</p>
      {plan.value === undefined ? (
        <button type="button" class="act" onClick={() => state.turnTo({})}>
          {WORDS.again}
        </button>
      ) : undefined}
    </div>
  );
}

/** A place for the tests to read: `EAST,NORTH` in metres to a hundredth. */
const placeText = (p: PlanePoint | undefined): string | undefined =>
  p === undefined ? undefined : `${p.eastM.toFixed(2)},${p.northM.toFixed(2)}`;
