import type { Priced } from '../value/solution.ts';
import type { Landmark } from './landmark.ts';

/** Why one stroke costs more than another. Chances are shares of balls. */
export type Because =
  | { readonly kind: 'danger'; readonly landmark: Landmark; readonly here: number; readonly there: number }
  | { readonly kind: 'green'; readonly here: number; readonly there: number }
  | { readonly kind: 'putt'; readonly hereM: number; readonly thereM: number }
  | { readonly kind: 'approach'; readonly hereM: number; readonly thereM: number };

const DANGERS: ReadonlySet<string> = new Set(['bunker', 'penalty', 'recovery', 'out', 'unmapped']);
/** A danger is named when it explains at least this share of the difference, and the chances differ as printed. */
const LEAST_SHARE = 0.3;
const BALL = 0.01;

interface Group {
  readonly landmark: Landmark;
  readonly here: number;
  readonly there: number;
  /** Part of the difference from finishing there more often, and from what a ball there costs. */
  readonly shift: number;
  readonly within: number;
}

/**
 * What explains that `there` costs more than `here`. With chance p and mean cost c of a kind of ground, and bars for the mean of the two strokes,
 * p'c' - pc = (p' - p)(c_bar - E) + p_bar (c' - c), summed over the ground; E is the cheaper stroke's expected strokes and drops out of the sum.
 * The danger whose first term is largest is named if it counts; else more balls on the green, fewer in the rough,
 * shorter putts, or a better next stroke.
 */
export function explain(marks: ReadonlyMap<number, Landmark>, here: Priced, there: Priced): Because {
  const difference = there.strokes - here.strokes;
  const groups = groupsOf(marks, here, there);
  const dangers = groups.filter((g) => DANGERS.has(g.landmark.surface) && g.there - g.here >= BALL);
  const [danger] = dangers.toSorted((a, b) => b.shift - a.shift);
  if (danger !== undefined && danger.shift >= LEAST_SHARE * difference) {
    return { kind: 'danger', landmark: danger.landmark, here: danger.here, there: danger.there };
  }
  const green = groups.find((g) => g.landmark.surface === 'green');
  const rough = groups.find((g) => g.landmark.surface === 'rough');
  const putts = green?.within ?? 0;
  const missed = (green?.shift ?? 0) + Math.max(0, rough?.shift ?? 0);
  if (green !== undefined && green.here - green.there >= BALL && missed >= Math.max(putts, difference / 2)) {
    return { kind: 'green', here: green.here, there: green.there };
  }
  if (rough !== undefined && rough.there - rough.here >= BALL && rough.shift >= difference / 2) {
    return { kind: 'danger', landmark: rough.landmark, here: rough.here, there: rough.there };
  }
  const metres = { hereM: here.proximityMedianM, thereM: there.proximityMedianM };
  return { kind: putts >= difference / 2 ? 'putt' : 'approach', ...metres };
}

function groupsOf(marks: ReadonlyMap<number, Landmark>, here: Priced, there: Priced): Group[] {
  const sum = (byArea: ReadonlyMap<number, number>, mark: Landmark): number =>
    mark.areas.reduce((total, area) => total + (byArea.get(area) ?? 0), 0);
  return [...new Set(marks.values())].map((landmark) => {
    const chance = { here: sum(here.areaChances, landmark), there: sum(there.areaChances, landmark) };
    const cost = { here: sum(here.areaCosts, landmark), there: sum(there.areaCosts, landmark) };
    const mean = {
      here: chance.here > 0 ? cost.here / chance.here : cost.there / chance.there,
      there: chance.there > 0 ? cost.there / chance.there : cost.here / chance.here,
    };
    if (!(chance.here + chance.there > 0)) return { landmark, here: 0, there: 0, shift: 0, within: 0 };
    return {
      landmark,
      ...chance,
      shift: (chance.there - chance.here) * ((mean.here + mean.there) / 2 - here.strokes),
      within: ((chance.here + chance.there) / 2) * (mean.there - mean.here),
    };
  });
}
