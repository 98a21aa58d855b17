import type { Option } from '../player/option.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { LIE_CODES, type Weapon } from './arsenal.ts';
import type { Field } from './field.ts';
import { cheapest, inRange, polish, worthTrying, type Found } from './search.ts';
import type { BallState, Candidate } from './solution.ts';
import type { Solving } from './sweep.ts';

/** Aims of the exhaustive scan: every degree to sixty either side of the flag, or round the whole circle for a stroke that does not fit the distance. */
const SCAN_STEP_RAD = RAD_PER_DEG;
const SCAN_STEPS = 60;
const POLISH_RAD = [SCAN_STEP_RAD / 2, SCAN_STEP_RAD / 5];
const ROUND_STEPS = 180;

/** A state in the play frame, with V there. */
export interface Here {
  readonly u: number;
  readonly v: number;
  readonly lie: number;
  readonly strokes: number;
}

/** Answers for single states: every option, every aim, no short cuts. */
export class Query {
  private readonly field: Field;
  private readonly solved: Solving;
  private readonly weapons = new Map<number, Map<Option, Weapon>>();
  private last: { readonly from: BallState; readonly here: Here } | undefined;

  constructor(field: Field, solved: Solving) {
    this.field = field;
    this.solved = solved;
  }

  /** A state with its V. */
  here(from: BallState): Here {
    if (this.last?.from === from) return this.last.here;
    const u = this.field.frame.u(from.at);
    const v = this.field.frame.v(from.at);
    const lie = LIE_CODES[from.lie];
    const weapons = this.field.arsenal.get(lie) ?? [];
    let strokes = Infinity;
    if (weapons.length > 0) {
      strokes = 6;
      const pool = worthTrying(weapons, this.field.distanceM(u, v));
      for (let pass = 0; pass < 2; pass++) strokes = cheapest(this.solved.evaluator, pool, u, v, strokes).strokes;
      for (const w of weapons) {
        for (const f of this.minima(w, { u, v, lie, strokes })) strokes = Math.min(strokes, f.strokes);
      }
    }
    const here = { u, v, lie, strokes };
    this.last = { from, here };
    return here;
  }

  weapon(option: Option, lie: number): Weapon | undefined {
    let known = this.weapons.get(lie);
    if (known === undefined) this.weapons.set(lie, (known = new Map()));
    const ready = known.get(option);
    if (ready !== undefined) return ready;
    const name = (Object.keys(LIE_CODES) as (keyof typeof LIE_CODES)[]).find((l) => LIE_CODES[l] === lie)!;
    const pattern = option.byLie[name];
    if (pattern === undefined) return undefined;
    const place = this.field.player.options.indexOf(option);
    const armed = this.field.arsenal.get(lie)?.find((w) => w.option === place);
    const weapon = armed ?? this.field.arm(place, pattern);
    if (place >= 0) known.set(option, weapon);
    return weapon;
  }

  /** Every local minimum of one stroke over its aims, polished. */
  private minima(weapon: Weapon, here: Here): Found[] {
    const { u, v, strokes } = here;
    const { evaluator } = this.solved;
    const atFlag = this.field.bearingToFlag(u, v);
    const cost = (k: number): number =>
      evaluator.always(weapon, weapon.fine, u, v, atFlag + k * SCAN_STEP_RAD, strokes);
    const first = inRange(weapon, this.field.distanceM(u, v)) ? -SCAN_STEPS : -ROUND_STEPS;
    const row = Float64Array.from({ length: 1 - 2 * first }, (_, i) => cost(first + i));
    const out: Found[] = [];
    row.forEach((q, i) => {
      const edge = i === 0 || i === row.length - 1;
      if ((i > 0 && row[i - 1]! < q) || (i + 1 < row.length && row[i + 1]! <= q)) return;
      const found = { weapon, bearing: atFlag + (first + i) * SCAN_STEP_RAD, strokes: q };
      if (!edge) for (const step of POLISH_RAD) polish(evaluator, found, weapon.fine, u, v, strokes, step);
      out.push(found);
    });
    return out;
  }

  /** Candidates within a margin of the best, best first. */
  best(from: BallState, withinStrokes: number): Candidate[] {
    const here = this.here(from);
    const all = this.field.player.options.flatMap((option) => {
      const weapon = this.weapon(option, here.lie);
      return weapon === undefined ? [] : this.minima(weapon, here).map((f) => this.candidate(option, f, here));
    });
    const least = all.reduce((m, c) => Math.min(m, c.strokes), Infinity);
    return all.filter((c) => c.strokes <= least + withinStrokes).sort((a, b) => a.strokes - b.strokes);
  }

  bestOf(from: BallState, option: Option): Candidate | undefined {
    const here = this.here(from);
    const weapon = this.weapon(option, here.lie);
    if (weapon === undefined) return undefined;
    const all = this.minima(weapon, here).map((f) => this.candidate(option, f, here));
    return all.reduce((a, b) => (b.strokes < a.strokes ? b : a));
  }

  private candidate(option: Option, f: Found, here: Here): Candidate {
    const strokes = this.solved.evaluator.once(f.weapon, f.weapon.fine, here.u, here.v, f.bearing, here.strokes);
    return { option, bearingRad: normal(f.bearing + this.field.frame.bearingRad), strokes };
  }

  strokesOf(from: BallState, option: Option, bearingRad: number): number {
    const here = this.here(from);
    const weapon = this.weapon(option, here.lie);
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
