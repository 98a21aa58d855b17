import type { PlanePoint } from '@leeway/engine';
import { signal } from '@preact/signals';
import type { Option, PlanDesk, SpotAnswer, SpotAsk } from '../asks.ts';
import { Latest } from './latest.ts';

/** The user's own spot for the shown shot, and what it costs. */
export class OwnSpot {
  readonly at = signal<PlanePoint | undefined>(undefined);
  /** The club and swing that it is to be played with; the cheapest unless said. */
  readonly option = signal<Option | undefined>(undefined);
  readonly cost = signal<SpotAnswer | undefined>(undefined);
  private readonly asks: Latest<SpotAsk, SpotAnswer>;
  private tell = false;

  /** `told` hears what a spot costs that has come to rest; `failed` what went wrong, after which the spot is given up. */
  constructor(desk: Pick<PlanDesk, 'spot'>, told: () => void, failed: (error: unknown) => void) {
    this.asks = new Latest((ask) => desk.spot(ask), {
      got: (cost) => {
        this.cost.value = cost;
        if (this.tell) told();
        this.tell = false;
      },
      failed: (error) => {
        this.giveUp();
        failed(error);
      },
    });
  }

  /** Asks what the spot costs, if there is one; once it has come to rest, it is told too. */
  ask(shot: number, atRest: boolean): void {
    const spot = this.at.value;
    if (spot === undefined) return;
    this.tell ||= atRest;
    const option = this.option.value;
    this.asks.put({ shot, spot, ...(option === undefined ? {} : { option }) });
  }

  giveUp(): void {
    this.asks.drop();
    this.tell = false;
    this.at.value = undefined;
    this.option.value = undefined;
    this.cost.value = undefined;
  }
}
