import { computed, signal } from '@preact/signals';

/** The answer of each shot is hidden until player or coach has chosen. */
export class YouFirst {
  readonly on = signal(false);
  /** The answer of this shot was asked for. */
  private readonly shown = signal(false);
  readonly hidden = computed(() => this.on.value && !this.shown.value);

  /** Another shot: its answer is hidden again. */
  again(): void {
    this.shown.value = false;
  }

  show(): void {
    this.shown.value = true;
  }
}
