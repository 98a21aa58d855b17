import type { Surface } from '../quantity/lies.ts';
import { GRAVITY_MPS2 } from './aerodynamics.ts';

export const FIRMNESSES = ['soft', 'normal', 'firm'] as const;
export type Firmness = (typeof FIRMNESSES)[number];

/**
 * How turf takes a ball: factors on Penner's restitution and on the tilt of the turf under the impact (the softer, the more), the sliding
 * friction, and the rolling resistance as a share of the weight.
 */
export interface Turf {
  readonly restitution: number;
  readonly tilt: number;
  readonly friction: number;
  readonly rolling: number;
}

/** Penner's own green (Canadian Journal of Physics 80 (2002) 931). */
export const PENNER_GREEN: Turf = { restitution: 1, tilt: 1, friction: 0.4, rolling: 0.131 };

/** The normal rows are set to observed runs of tournament shots; soft and firm are judgement inside plausible bounds. */
const GREEN: { readonly [F in Firmness]: Turf } = {
  soft: { restitution: 0.7, tilt: 1.3, friction: 0.25, rolling: 0.16 },
  normal: { restitution: 0.8, tilt: 1.1, friction: 0.2, rolling: 0.131 },
  firm: { restitution: 0.9, tilt: 1, friction: 0.2, rolling: 0.1 },
};
const FAIRWAY: { readonly [F in Firmness]: Turf } = {
  soft: { restitution: 0.7, tilt: 1.25, friction: 0.25, rolling: 0.3 },
  normal: { restitution: 0.8, tilt: 1.1, friction: 0.2, rolling: 0.22 },
  firm: { restitution: 0.9, tilt: 1, friction: 0.2, rolling: 0.18 },
};
/** Judgement, whatever the firmness. Trees and scrub stop a ball as long grass does. */
const ROUGH: Turf = { restitution: 0.6, tilt: 1.3, friction: 0.4, rolling: 0.6 };
/** Assumption: frozen turf hardly gives, on any short grass. */
const FROZEN: Turf = { restitution: 1.2, tilt: 0.6, friction: 0.2, rolling: 0.1 };

/** How the ground takes a ball today. What is absent was not given: firmness is then normal, and a green rolls as in the table. */
export interface GroundToday {
  readonly firmness?: Firmness;
  /** Length of a ball's roll from the standard release (the stimpmeter's figure), metres. */
  readonly greenSpeedM?: number;
  /** Wet ground plays soft, whatever else was said. */
  readonly wet?: boolean;
  readonly frozen?: boolean;
  /** A ball stays in the mark that it makes. */
  readonly plugging?: boolean;
  /** A ball on short grass may be lifted and placed. */
  readonly preferredLies?: boolean;
}

/** The standard release of a ball for measuring a green's speed. */
const RELEASE_MPS = 1.83;

/** Rolling resistance from a green's speed: v^2 / 2 S is the deceleration, 5/7 rho g. */
export const rollingOfGreen = (greenSpeedM: number): number =>
  (RELEASE_MPS * RELEASE_MPS) / (2 * greenSpeedM) / ((5 / 7) * GRAVITY_MPS2);

/** The turf of a surface today; `undefined` where a ball stays as it lands, in sand and water. */
export function turfOf(surface: Surface, today: GroundToday): Turf | undefined {
  const firmness = today.wet ? 'soft' : (today.firmness ?? 'normal');
  switch (surface) {
    case 'green': {
      const turf = today.frozen ? FROZEN : GREEN[firmness];
      return today.greenSpeedM === undefined ? turf : { ...turf, rolling: rollingOfGreen(today.greenSpeedM) };
    }
    case 'fairway':
    case 'tee':
      return today.frozen ? FROZEN : FAIRWAY[firmness];
    case 'rough':
    case 'recovery':
    case 'out':
      return ROUGH;
    case 'bunker':
    case 'penalty':
      return undefined;
  }
}
