import type { Option } from '../player/option.ts';
import { LIE_CODES, LIE_OF, type Weapon } from './arsenal.ts';
import type { Field } from './field.ts';
import { Scan } from './scan.ts';
import type { Dropped } from './relief.ts';
import { cheapest, worthTryingFrom, type Found } from './search.ts';
import type { BallState, Candidate } from './solution.ts';
import type { Solving } from './sweep.ts';
import { mayBeUnplayable, unplayable } from './unplayable.ts';

/** V and the scan that it comes from are worked again while they differ by more than this. */
const SAME_STROKES = 0.001;
const MOST_SCANS = 3;

/** A state in the play frame, with V there. */
export interface Here {
  readonly u: number;
  readonly v: number;
  readonly lie: number;
  readonly strokes: number;
  /** The relief of Rule 19, where it is cheaper than any stroke or none can be played. */
  readonly unplayable?: Dropped;
}

/** A state that has been asked about, with its scan. */
interface Asked {
  readonly from: BallState;
  readonly here: Here;
  readonly scan: Scan;
}

/** By raster code of the lie. */
export type Armed = Map<number, WeakMap<Option, Weapon>>;

/** Answers for single states: every option, all aims. Remembers the last state it was asked about. */
export class Query {
  private readonly field: Field;
  private readonly solved: Solving;
  private readonly weapons: Armed;
  private last: Asked | undefined;

  /** Strokes that have been made ready are kept in `weapons`, for other queries on the same day. */
  constructor(field: Field, solved: Solving, weapons: Armed) {
    this.field = field;
    this.solved = solved;
    this.weapons = weapons;
  }

  /** A state with its V. */
  here(from: BallState): Here {
    return this.asked(from).here;
  }

  private asked(from: BallState): Asked {
    if (this.last?.from === from) return this.last;
    const { field } = this;
    const { evaluator } = this.solved;
    const u = field.frame.u(from.at);
    const v = field.frame.v(from.at);
    const lie = LIE_CODES[from.lie];
    const weapons = field.arsenal.get(lie) ?? [];
    let scan = new Scan(evaluator, u, v, Infinity);
    let strokes = Infinity;
    if (weapons.length > 0) {
      strokes = 6;
      const pool = worthTryingFrom(field, lie, field.distanceM(u, v), field.bearingToFlag(u, v));
      for (let pass = 0; pass < 2; pass++) strokes = cheapest(evaluator, pool, u, v, strokes).strokes;
      for (let k = 0; k < MOST_SCANS; k++) {
        const before = strokes;
        scan = new Scan(evaluator, u, v, before);
        const [best] = scan.within(weapons, 0);
        if (best !== undefined) strokes = evaluator.always(best.weapon, best.weapon.fine, u, v, best.bearing, before);
        if (Math.abs(strokes - before) < SAME_STROKES) break;
      }
    }
    this.last = { from, here: this.orDrop(u, v, lie, strokes), scan };
    return this.last;
  }

  /** A state whose best stroke costs so much, or the relief of Rule 19 where that is cheaper. */
  private orDrop(u: number, v: number, lie: number, strokes: number): Here {
    const { field } = this;
    if (!mayBeUnplayable(field, lie, u, v, strokes)) return { u, v, lie, strokes };
    const dropped = unplayable(field, lie, u, v);
    const cost = dropped === undefined ? Infinity : dropped.penaltyStrokes + dropped.strokes;
    if (dropped === undefined || !(cost < strokes)) return { u, v, lie, strokes };
    return { u, v, lie, strokes: cost, unplayable: dropped };
  }

  weapon(option: Option, lie: number): Weapon | undefined {
    let known = this.weapons.get(lie);
    if (known === undefined) this.weapons.set(lie, (known = new WeakMap()));
    const ready = known.get(option);
    if (ready !== undefined) return ready;
    const pattern = option.byLie[LIE_OF[lie]!];
    if (pattern === undefined) return undefined;
    const place = this.field.player.options.indexOf(option);
    const armed = this.field.arsenal.get(lie)?.find((w) => w.option === place);
    const weapon = armed ?? this.field.arm(place, option, pattern);
    known.set(option, weapon);
    return weapon;
  }

  /** Candidates within a margin of the best, best first. */
  best(from: BallState, withinStrokes: number): Candidate[] {
    const { here, scan } = this.asked(from);
    const options = new Map<Weapon, Option>();
    for (const option of this.field.player.options) {
      const weapon = this.weapon(option, here.lie);
      if (weapon !== undefined) options.set(weapon, option);
    }
    return scan
      .within([...options.keys()], withinStrokes)
      .map((f) => this.candidate(options.get(f.weapon)!, f, here))
      .sort((a, b) => a.strokes - b.strokes);
  }

  bestOf(from: BallState, option: Option): Candidate | undefined {
    const { here, scan } = this.asked(from);
    const weapon = this.weapon(option, here.lie);
    const [best] = weapon === undefined ? [] : scan.within([weapon], 0);
    return best && this.candidate(option, best, here);
  }

  /** A stroke's weapon if there is one; else one for a single look, which is not kept. */
  weaponAtAim(option: Option, lie: number): Weapon | undefined {
    const ready = this.weapons.get(lie)?.get(option);
    if (ready !== undefined || this.field.player.options.includes(option)) return ready ?? this.weapon(option, lie);
    const pattern = option.byLie[LIE_OF[lie]!];
    return pattern && this.field.arm(-1, option, pattern, 'fine only');
  }

  private candidate(option: Option, f: Found, here: Here): Candidate {
    const strokes = this.solved.evaluator.once(f.weapon, f.weapon.fine, here.u, here.v, f.bearing, here.strokes);
    return { option, bearingRad: normal(f.bearing + this.field.frame.bearingRad), strokes };
  }

  strokesOf(from: BallState, option: Option, bearingRad: number): number {
    const here = this.here(from);
    const weapon = this.weaponAtAim(option, here.lie);
    if (weapon === undefined) return NaN;
    const bearing = bearingRad - this.field.frame.bearingRad;
    return this.solved.evaluator.once(weapon, weapon.fine, here.u, here.v, bearing, here.strokes);
  }
}

/** A bearing from 0 up to a whole turn. */
const normal = (bearingRad: number): number => {
  const turn = 2 * Math.PI;
  return ((bearingRad % turn) + turn) % turn;
};
