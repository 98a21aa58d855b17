import type { Clock } from './clock.ts';

/** What has lain still this long is answered for in full. */
const SETTLE_MS = 150;

/** How often to ask while something is dragged. */
export class Pace {
  private readonly clock: Clock;
  private due: (() => void) | undefined;
  private callOff: () => void = () => undefined;

  constructor(clock: Clock) {
    this.clock = clock;
  }

  /** `each` before the next frame, once however often it has moved; `still` when nothing has moved for a while. */
  follow(each: () => void, still: () => void): void {
    this.later(SETTLE_MS, () => {
      this.due = undefined;
      still();
    });
    const framed = this.due !== undefined;
    this.due = each;
    if (framed) return;
    this.clock.frame(() => {
      const { due } = this;
      this.due = undefined;
      due?.();
    });
  }

  /** Does something after a while, unless something moves or is put off meanwhile. */
  later(ms: number, then: () => void): void {
    this.callOff();
    this.callOff = this.clock.after(ms, then);
  }

  stop(): void {
    this.callOff();
    this.due = undefined;
  }
}
