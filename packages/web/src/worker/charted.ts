import type { Charted } from '@leeway/chart';
import type { OpenHole } from './openHole.ts';
import type { Prepared } from './prepared.ts';
import type { ReadHole } from './readHole.ts';
import { rasterReader } from './strokeRaster.ts';

/** What charts of an open hole are drawn from. */
export function chartedOf({ plan, course, attribution }: OpenHole): Charted {
  const { solution } = plan;
  return {
    ground: solution.ground,
    ...named(course, attribution),
    choices: plan.shots.map(({ choice }) => choice),
    strokesAtRest: (p, from) => solution.strokesAtRest(p, from),
  };
}

/** The same, of a hole that is not solved yet but was worked out beforehand. */
export function chartedBefore({ ground, course, attribution }: ReadHole, { choices, strokes }: Prepared): Charted {
  return { ground, ...named(course, attribution), choices, strokesAtRest: rasterReader(strokes) };
}

/** The ground that a shot is to be chosen on, without any answer. */
export function unchosen({ ground, course, attribution, choices }: Charted, shot: number): Charted {
  const from = choices[shot]?.from;
  if (from === undefined) throw new RangeError(`there is no shot ${shot + 1} in this plan`);
  return { ground, ...named(course, attribution), choices: [], chooseFrom: from };
}

const named = (
  course: string | undefined,
  attribution: string | undefined,
): Pick<Charted, 'course' | 'attribution'> => ({
  ...(course === undefined ? {} : { course }),
  ...(attribution === undefined ? {} : { attribution }),
});
