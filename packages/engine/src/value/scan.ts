import { RAD_PER_DEG } from '../quantity/units.ts';
import type { Weapon } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import { inRange, polish, type Found } from './search.ts';

/** Aims that are looked at: every degree to sixty either side of the flag; for a stroke that does not fit the distance every other one, all round. */
const NARROW = { stepRad: RAD_PER_DEG, steps: 60 };
const ROUND = { stepRad: 2 * RAD_PER_DEG, steps: 90 };
/** The fine rule tries all aims round a minimum that cost no more than this above it by the middle one, and at least these to either side. */
const FLAT_STROKES = 0.03;
const BESIDE = 2;
/** From the lowest it goes to the bottom by these shares of a step. */
const POLISH = [1 / 2, 1 / 5] as const;
/** A minimum by the middle rule is followed by the fine one when, corrected, it comes within so much more than is asked for. */
const SLACK_STROKES = 0.02;

/** A local minimum of a stroke over its aims. */
interface Minimum {
  readonly weapon: Weapon;
  /** How many aims to either side are to be tried, the bearings falling and rising. */
  readonly left: number;
  readonly right: number;
  bearing: number;
  /** By the middle rule and corrected, or, once it has been followed there, by the fine one. */
  strokes: number;
  followed: boolean;
}

/** All local minima of one stroke, and what the middle rule was wrong by at the lowest. */
interface Minima {
  readonly all: readonly Minimum[];
  readonly errorStrokes: number;
  readonly stepRad: number;
}

/**
 * Every local minimum of strokes over all their aims, played once from a state whose V is given. The middle rule finds them; the fine rule follows those that can
 * matter to what is asked, with room for what the middle one was found to be wrong by for that very stroke.
 */
export class Scan {
  private readonly evaluator: Evaluator;
  private readonly u: number;
  private readonly v: number;
  private readonly fromHere: number;
  private readonly known = new Map<Weapon, Minima>();

  constructor(evaluator: Evaluator, u: number, v: number, fromHere: number) {
    this.evaluator = evaluator;
    this.u = u;
    this.v = v;
    this.fromHere = fromHere;
  }

  /** The minima of some strokes, by the fine rule, that come within a margin of the least of them. */
  within(weapons: readonly Weapon[], marginStrokes: number): readonly Found[] {
    const open = weapons.flatMap((weapon) => {
      const minima = this.minimaOf(weapon);
      return minima.all.map((minimum) => ({ minimum, minima }));
    });
    open.sort((a, b) => a.minimum.strokes - b.minimum.strokes);
    const found: Found[] = [];
    let least = Infinity;
    for (const { minimum, minima } of open) {
      const slack = SLACK_STROKES + Math.abs(minima.errorStrokes);
      if (minimum.strokes > least + marginStrokes + slack) continue;
      this.follow(minimum, minima.stepRad);
      least = Math.min(least, minimum.strokes);
      // two minima of the middle rule may be one of the fine rule
      const again = found.some(
        (f) => f.weapon === minimum.weapon && Math.abs(f.bearing - minimum.bearing) < minima.stepRad,
      );
      if (!again) found.push(minimum);
    }
    return found.filter((f) => f.strokes <= least + marginStrokes);
  }

  private minimaOf(weapon: Weapon): Minima {
    const known = this.known.get(weapon);
    if (known !== undefined) return known;
    const { evaluator, u, v, fromHere } = this;
    const { field } = evaluator;
    const atFlag = field.bearingToFlag(u, v);
    const { stepRad, steps } = inRange(weapon, field.distanceM(u, v), atFlag) ? NARROW : ROUND;
    const first = atFlag - steps * stepRad;
    const row = Float64Array.from({ length: 2 * steps + 1 }, (_, i) =>
      evaluator.once(weapon, weapon.middle, u, v, first + i * stepRad, fromHere),
    );
    const all: Minimum[] = [];
    row.forEach((strokes, i) => {
      if ((i > 0 && row[i - 1]! < strokes) || (i + 1 < row.length && row[i + 1]! <= strokes)) return;
      let left = 0;
      let right = 0;
      while (left < i && (left < BESIDE || row[i - left - 1]! < strokes + FLAT_STROKES)) left++;
      while (i + right + 1 < row.length && (right < BESIDE || row[i + right + 1]! < strokes + FLAT_STROKES)) right++;
      all.push({ weapon, left, right, bearing: first + i * stepRad, strokes, followed: false });
    });
    const lowest = all.reduce((a, b) => (b.strokes < a.strokes ? b : a));
    const errorStrokes = evaluator.once(weapon, weapon.fine, u, v, lowest.bearing, fromHere) - lowest.strokes;
    for (const minimum of all) minimum.strokes += errorStrokes;
    const minima = { all, errorStrokes, stepRad };
    this.known.set(weapon, minima);
    return minima;
  }

  private follow(minimum: Minimum, stepRad: number): void {
    if (minimum.followed) return;
    const { evaluator, u, v, fromHere } = this;
    const { weapon } = minimum;
    const cost = (bearing: number): number => evaluator.once(weapon, weapon.fine, u, v, bearing, fromHere);
    const middle = minimum.bearing;
    minimum.strokes = Infinity;
    for (let k = -minimum.left; k <= minimum.right; k++) {
      const bearing = middle + k * stepRad;
      const strokes = cost(bearing);
      if (strokes < minimum.strokes) Object.assign(minimum, { bearing, strokes });
    }
    for (const share of POLISH) polish(minimum, cost, share * stepRad);
    minimum.followed = true;
  }
}
