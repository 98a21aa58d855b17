import {
  carryRatio,
  logitOf,
  sevenIronPriorM,
  shareOfLogit,
  spreadPrior,
  type Level,
  type Random,
} from '@leeway/engine';
import type { TrueSwing } from '../virtualPlayer.ts';
import { USUAL, type World } from './world.ts';

/** A made-up player whose truth is known. */
export interface VirtualPlayer {
  readonly level: Level & { readonly handicapIndex: number };
  readonly hand: 'right' | 'left';
  readonly swings: readonly VirtualSwing[];
}

export type VirtualSwing = TrueSwing & {
  /** Correlation of a good strike's carry and direction. */
  readonly corr: number;
};

const CLUBS = [
  'driver',
  '3-wood',
  '5-hybrid',
  '5-iron',
  '6-iron',
  '7-iron',
  '8-iron',
  '9-iron',
  'PW',
  '50°',
  '54°',
  '58°',
];

/**
 * A player off 0 to 30: the level's usual figures, moved by how this player differs in all clubs and by how each club does. Draw and fade are mirrored by
 * the hand: right-handers start the ball a little right of the line on average.
 */
export function virtualPlayer(random: Random, clubs: number, world: World = USUAL): VirtualPlayer {
  const handicapIndex = Math.round(300 * random.next()) / 10;
  const sex = random.next() < 0.35 ? 'woman' : 'man';
  const hand = random.next() < 0.15 ? 'left' : 'right';
  const level: VirtualPlayer['level'] = { handicapIndex, sex };
  const sevenM = sevenIronPriorM(level) * Math.exp(0.08 * random.normal());
  const [wider, wilder, worse] = [random.normal(), random.normal(), random.normal()];
  const side = hand === 'right' ? 1 : -1;
  const startsDeg = side * 0.5 + 1.4 * random.normal();
  const bag = CLUBS.slice(0, clubs).map((club): VirtualSwing => {
    const prior = spreadPrior(level, club, 'full');
    const { spreads, mishits } = world;
    const spread = (all: number): number => Math.exp(spreads.all * all + spreads.own * random.normal());
    const carryM = sevenM * carryRatio(club, 'full', sevenM) * Math.exp(0.04 * random.normal());
    return {
      club,
      swing: 'full',
      carryM,
      sdCarryM: carryM * prior.sdCarryShare * spread(wider),
      directionDeg: startsDeg + 1.4 * random.normal(),
      sdDirectionDeg: prior.directionSdDeg * spread(wilder),
      mishitShare: shareOfLogit(logitOf(prior.mishitShare) + mishits.all * worse + mishits.own * random.normal()),
      corr: Math.tanh(side * 0.05 + 0.25 * random.normal()),
    };
  });
  return { level, hand, swings: bag };
}
