import {
  type KeptPlan,
  type PlanDocument,
  roundDocument,
  roundPlan,
  type Shelf,
  type ShelvedGround,
  type ShelvedPlayer,
} from '@leeway/contract';
import { CALM, type Wind } from '@leeway/engine';
import { batch, computed, signal } from '@preact/signals';
import { got, newRecord, sent, today } from '../shell/api.ts';
import { units } from '../shell/remembered.ts';
import { tryingWith } from '../shell/trying.ts';
import { isKept } from '../state/own.ts';
import type { RoundDesk, RoundHoleAnswer } from './asks.ts';
import { fromOf, pinOf, speedOf } from './typed.ts';
import { ROUND } from './words.ts';

/** One line of the sheet, from a plan that was just made or from one that is kept. */
export interface Row {
  readonly hole: string;
  readonly par: number;
  readonly lengthM?: number;
  readonly line?: string;
  readonly expectedStrokes?: number;
  readonly scores?: { readonly parOrBetter: number; readonly doubleOrWorse: number } | undefined;
  /** What stands in the place of the line: it waits, is being planned, or could not be. */
  readonly instead?: string;
}

/** What is planned, and what of it has come. */
interface Planned {
  readonly key: string;
  readonly answers: ReadonlyMap<string, RoundHoleAnswer | string>;
  readonly running: boolean;
}

/** What the round page shows: a round that is being planned hole by hole, or one that is kept. */
export class RoundState {
  readonly shelf: Shelf;
  readonly ground;
  readonly player;
  readonly date = signal(today());
  readonly speed = signal('');
  readonly from = signal('');
  readonly flags = signal<{ readonly [hole: string]: string }>({});
  readonly planned = signal<Planned | undefined>(undefined);
  readonly kept = signal<readonly KeptPlan[]>([]);
  /** The kept one that is shown. */
  readonly opened = signal<KeptPlan | undefined>(undefined);
  readonly asking = signal<string | undefined>(undefined);
  readonly said = signal('');
  readonly fault = signal<string | undefined>(undefined);
  private readonly trying = tryingWith(this.fault);

  readonly wind = computed<Wind | undefined>(() => {
    const [speedMps, fromDeg] = [speedOf(this.speed.value, units.value), fromOf(this.from.value)];
    return speedMps === undefined || fromDeg === undefined ? undefined : { ...CALM, speedMps, fromDeg };
  });
  /** All that a plan is made from, to tell whether it is still that. */
  readonly key = computed(() =>
    JSON.stringify([this.ground.value.id, this.player.value.id, this.wind.value, this.flags.value, units.value]),
  );
  readonly stale = computed(() => this.planned.value !== undefined && this.planned.value.key !== this.key.value);
  readonly answers = computed(() =>
    this.ground.value.holes.flatMap(({ hole }) => {
      const answer = this.planned.value?.answers.get(hole);
      return answer === undefined || typeof answer === 'string' ? [] : [answer];
    }),
  );
  /** Every hole is planned, for what stands on the page. */
  readonly whole = computed(() => !this.stale.value && this.answers.value.length === this.ground.value.holes.length);
  readonly total = computed<PlanDocument['round']>(() => {
    const { opened, answers } = this;
    if (opened.value !== undefined) return opened.value.round;
    return this.whole.value ? roundDocument(answers.value.map(({ part }) => part)) : undefined;
  });
  readonly mayPlan = computed(
    () => this.wind.value !== undefined && Object.values(this.flags.value).every((flag) => pinOf(flag) !== undefined),
  );
  readonly rows = computed<readonly Row[]>(() => (this.opened.value ? keptRows(this.opened.value) : this.todaysRows()));

  private readonly open: () => { readonly desk: RoundDesk; readonly close: () => void };
  private desk: { readonly desk: RoundDesk; readonly close: () => void } | undefined;

  constructor(
    shelf: Shelf,
    start: { readonly ground: ShelvedGround; readonly player: ShelvedPlayer },
    open: () => { readonly desk: RoundDesk; readonly close: () => void },
  ) {
    this.shelf = shelf;
    this.ground = signal(start.ground);
    this.player = signal(start.player);
    this.open = open;
  }

  choose(next: { readonly ground?: string; readonly player?: string }): void {
    this.stop();
    batch(() => {
      this.ground.value = this.shelf.grounds.find(({ id }) => id === next.ground) ?? this.ground.value;
      this.player.value = this.shelf.players.find(({ id }) => id === next.player) ?? this.player.value;
      this.opened.value = undefined;
      this.planned.value = undefined;
      this.said.value = '';
      if (next.ground !== undefined) this.flags.value = {};
    });
  }

  setFlag(hole: string, typed: string): void {
    this.flags.value = { ...this.flags.value, [hole]: typed };
  }

  /** Plans every hole; each line comes as soon as it is there. */
  async plan(): Promise<void> {
    const wind = this.wind.value;
    if (wind === undefined || !this.mayPlan.value) return;
    this.stop();
    this.said.value = '';
    const [ground, player, key] = [this.ground.value, this.player.value, this.key.value];
    const here = this.open();
    this.desk = here;
    this.planned.value = { key, answers: new Map(), running: true };
    const put = (hole: string, answer: RoundHoleAnswer | string): void => {
      const { planned } = this;
      if (this.desk !== here || planned.value === undefined) return;
      planned.value = { ...planned.value, answers: new Map([...planned.value.answers, [hole, answer]]) };
    };
    await Promise.all(
      ground.holes.map(async ({ hole }) => {
        const pin = pinOf(this.flags.value[hole] ?? '');
        try {
          const asked = { ground, hole, player, units: units.value, wind };
          const answer = await here.desk.hole(pin === undefined || pin === 'map' ? asked : { ...asked, pin });
          if (answer !== undefined) put(hole, answer);
        } catch (error) {
          put(hole, error instanceof Error ? error.message : String(error));
        }
      }),
    );
    if (this.desk === here) this.stop();
  }

  /** Ends the workers; what has come stays. */
  stop(): void {
    this.desk?.close();
    this.desk = undefined;
    if (this.planned.value !== undefined) this.planned.value = { ...this.planned.value, running: false };
  }

  async loadKept(): Promise<void> {
    const [player, course] = [this.player.value, this.ground.value.course];
    this.kept.value = [];
    if (!isKept(player)) return;
    await this.trying(async () => {
      const query = new URLSearchParams({ course }).toString();
      const { plans } = await got<{ plans: readonly KeptPlan[] }>(`/api/players/${player.id}/kept-plans?${query}`);
      if (player === this.player.value) this.kept.value = plans.filter(({ lines }) => lines !== undefined).toReversed();
    });
  }

  /** Keeps the round as it stands; it is never changed again. */
  async keep(): Promise<void> {
    const answers = this.answers.value;
    const [first] = answers;
    if (first === undefined || !this.whole.value) return;
    const { attribution, day } = first;
    const [player, { course }] = [this.player.value, this.ground.value];
    const heading = { player: player.name, course, ...(attribution === undefined ? {} : { attribution }) };
    const body = {
      date: this.date.value,
      plan: roundPlan(answers, heading, day),
      lines: answers.map(({ plan: { hole }, line }) => ({ hole, line })),
    };
    await this.trying(async () => {
      await sent(`/api/players/${player.id}/plans`, { records: [newRecord(body)] });
      this.said.value = ROUND.kept;
      await this.loadKept();
    });
  }

  async takeAway(): Promise<void> {
    const id = this.asking.value;
    if (id === undefined) return;
    await this.trying(async () => {
      await sent(`/api/players/${this.player.value.id}/withdrawals`, { records: [newRecord({}, id)] });
      batch(() => {
        this.asking.value = undefined;
        this.said.value = ROUND.gone;
        if (this.opened.value?.id === id) this.opened.value = undefined;
      });
      await this.loadKept();
    });
  }

  private todaysRows(): readonly Row[] {
    const planned = this.planned.value;
    return this.ground.value.holes.map(({ hole, par }): Row => {
      const answer = planned?.answers.get(hole);
      if (answer === undefined) return { hole, par, instead: planned?.running === true ? ROUND.waits : '' };
      if (typeof answer === 'string') return { hole, par, instead: answer };
      const { plan, line } = answer;
      const { lengthM, expectedStrokes } = plan;
      return { hole, par: plan.par, lengthM, line, expectedStrokes, scores: plan.shots[0]?.scores };
    });
  }
}

const keptRows = ({ holes, lines = [] }: KeptPlan): readonly Row[] =>
  holes.map(({ hole, par, expectedStrokes, scores }) => {
    const line = lines.find((l) => l.hole === hole)?.line;
    return { hole, par, expectedStrokes, scores, ...(line === undefined ? {} : { line }) };
  });
