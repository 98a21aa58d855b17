import { planDocument } from '@leeway/contract';
import type { KeepAnswer, KeepAsk } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** The plan of the open hole as a document that can be kept. */
export function keepAnswer({ plan, ask, course, attribution }: OpenHole, { place }: KeepAsk): KeepAnswer {
  const heading = {
    player: ask.player.name,
    units: ask.units,
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    scores: true,
  };
  return {
    plan: planDocument([plan], heading),
    ...(place === undefined ? {} : { place: plan.solution.ground.frame.toGeo(place) }),
  };
}
