import type { KeptPlan } from '@leeway/contract';
import { signal } from '@preact/signals';
import type { PlanState } from '../state/plan.ts';
import { isKept } from '../state/own.ts';
import { got, newRecord, sent, today } from '../shell/api.ts';
import { tryingWith } from '../shell/trying.ts';
import { FIRST } from './words.ts';

/** What is kept for the open hole and player, and keeping more. */
export class KeptState {
  readonly plans = signal<readonly KeptPlan[]>([]);
  readonly reason = signal('');
  readonly said = signal('');
  readonly fault = signal<string | undefined>(undefined);
  private readonly trying = tryingWith(this.fault);
  /** The one that is asked about before it goes. */
  readonly asking = signal<string | undefined>(undefined);
  private readonly state: PlanState;
  private asks = 0;

  constructor(state: PlanState) {
    this.state = state;
  }

  /** Finds what is kept; of a made-up player nothing is. */
  async load(): Promise<void> {
    const { ground, hole, player } = this.state.open.value;
    const ask = ++this.asks;
    if (!isKept(player)) {
      this.plans.value = [];
      return;
    }
    await this.trying(async () => {
      const query = new URLSearchParams({ course: ground.course, hole });
      const { plans } = await got<{ plans: readonly KeptPlan[] }>(
        `/api/players/${player.id}/kept-plans?${query.toString()}`,
      );
      if (ask === this.asks) this.plans.value = plans.toReversed();
    });
  }

  /** Keeps the plan, with the own choice when there is one. */
  async keep(): Promise<void> {
    const { state } = this;
    const { hole, player } = state.open.value;
    const [cost, shot] = [state.own.cost.value, state.index.value];
    const reason = this.reason.value.trim();
    this.said.value = FIRST.working;
    await this.trying(async () => {
      const answer = await state.keep();
      if (answer === undefined) return;
      const { plan, place } = answer;
      const own =
        cost === undefined || place === undefined
          ? {}
          : {
              own: {
                hole,
                shot,
                option: cost.option,
                spot: place,
                expectedStrokes: cost.expectedStrokes,
                costsMore: cost.costsMore,
                reason,
              },
            };
      const records = [newRecord({ date: today(), plan, ...own })];
      await sent(`/api/players/${player.id}/plans`, { records });
      this.reason.value = '';
      this.said.value = FIRST.kept;
      await this.load();
    });
    if (this.fault.value !== undefined) this.said.value = '';
  }

  /** Takes away what was asked about. */
  async takeAway(): Promise<void> {
    const id = this.asking.value;
    const { player } = this.state.open.value;
    if (id === undefined) return;
    await this.trying(async () => {
      await sent(`/api/players/${player.id}/withdrawals`, { records: [newRecord({}, id)] });
      this.said.value = FIRST.gone;
      this.asking.value = undefined;
      await this.load();
    });
  }
}
