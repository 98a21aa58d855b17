import { useRef } from 'preact/hooks';
import type { PlanState } from '../state/plan.ts';
import { shotTitle, WORDS } from '../words.ts';

const STEPS: { readonly [key: string]: number } = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** One numbered tab a shot; arrow keys step through them. */
export function ShotTabs({ state }: { readonly state: PlanState }) {
  const list = useRef<HTMLDivElement>(null);
  const count = state.plan.value?.shots.length ?? 0;
  const show = (index: number): void => {
    state.showShot(index);
    list.current?.querySelectorAll('button')[index]?.focus();
  };
  const step = (e: KeyboardEvent): void => {
    const by = STEPS[e.key];
    const ends = e.key === 'Home' ? 0 : e.key === 'End' ? count - 1 : undefined;
    if ((by === undefined && ends === undefined) || count === 0) return;
    e.preventDefault();
    show(ends ?? (state.index.value + (by ?? 0) + count) % count);
  };
  return (
    <div class="tabs" role="tablist" aria-label={WORDS.shots} ref={list} onKeyDown={step}>
      {Array.from({ length: count }, (_, i) => {
        const chosen = i === state.index.value;
        return (
          <button
            key={i}
            type="button"
            role="tab"
            id={`tab-${i}`}
            aria-controls="shot"
            aria-selected={chosen}
            tabIndex={chosen ? 0 : -1}
            onClick={() => state.showShot(i)}
          >
            <i aria-hidden="true">{i + 1}</i>
            {shotTitle(i)}
          </button>
        );
      })}
    </div>
  );
}
