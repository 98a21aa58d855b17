import type { ShelvedGround, ShelvedPlayer } from '@leeway/contract';
import type { Units } from '@leeway/engine';
import type { HoleAnswer } from '../asks.ts';

export type Light = 'paper' | 'sun';

/** What is open: a hole of a ground for a player. */
export interface Open {
  readonly ground: ShelvedGround;
  readonly hole: string;
  readonly player: ShelvedPlayer;
}

/** What the page begins with. */
export interface Start extends Open {
  readonly units: Units;
  readonly light: Light;
  /** Begin with the shot that plays to the flag, for whoever is new here; else with the tee shot. */
  readonly atFlag: boolean;
  /** The answer to its opening, where the desk has been asked already. */
  readonly answer?: Promise<HoleAnswer | undefined>;
}
