import { type Day, REFERENCE } from '../day/day.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import { windsOf } from '../reach/gusts.ts';
import { SURFACES } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { LIE_CODES } from './arsenal.ts';
import { Field } from './field.ts';
import { placesOf, price, strokesAtRest } from './price.ts';
import { dropState, nextState } from './next.ts';
import { Policy } from './policy.ts';
import { type Armed, Query } from './query.ts';
import { cellAt, UNMAPPED } from './raster.ts';
import { scoresFrom } from './scores.ts';
import type { BallState, Grade, HoleSolution, Priced, SolveStatus, Stroke } from './solution.ts';
import { Sweeps, type Patience } from './sweep.ts';

/** Sweeps go on until no state moves by 0.005 strokes, eight at the most; the status says which came first. */
export const PATIENCE: Patience = { tolerance: 0.005, most: 8 };

/**
 * Expected strokes to hole out from everywhere on a hole, for one player on one day, playing best. Formulation and errors: docs/models/strokes.md.
 * A player without any option from the tee or fairway cannot be solved for; callers check `canPlay` first.
 */
export const solveHole = (
  ground: HoleGround,
  player: PlayerModel,
  day: Day = REFERENCE,
  patience: Patience = PATIENCE,
): HoleSolution => new OpenHole(ground, player, day, patience).solution;

/** A hole that has been solved and is kept, so that it can be solved again for another flag with what does not depend on the flag. */
export class OpenHole {
  private readonly field: Field;
  private readonly sweeps: Sweeps;
  private readonly patience: Patience;
  /** The day that the strokes were made ready for. */
  private readonly opened: Day;
  private moves = 0;
  private weapons: Armed = new Map();
  /** For the flag as it stands; what was handed out before a move answers no more, except where things lie. */
  solution: HoleSolution;

  constructor(ground: HoleGround, player: PlayerModel, day: Day = REFERENCE, patience: Patience = PATIENCE) {
    this.patience = patience;
    this.opened = day;
    this.field = new Field(ground, player, day);
    this.sweeps = new Sweeps(this.field);
    this.solution = this.solutionNow(this.sweeps.solve(patience));
  }

  /** Whether a flag stands where this hole can be solved for it; another wants the hole opened afresh. */
  holds(flag: PlanePoint): boolean {
    return this.field.holds(flag);
  }

  /** Solves for another flag, one that it `holds`; `following`, for a ball at `from` and on its way to the flag. */
  moveFlag(ground: HoleGround, grade: Grade, from?: PlanePoint): void {
    const { flag } = this.field.ground;
    if (flag.eastM !== ground.flag.eastM || flag.northM !== ground.flag.northM) this.sweeps.moveFlag(ground);
    this.moves++;
    const { frame } = this.field;
    const ball = from && { u: frame.u(from), v: frame.v(from) };
    const status = grade === 'following' ? this.sweeps.follow(this.patience, ball) : this.sweeps.solve(this.patience);
    this.solution = this.solutionNow(status);
  }

  /** Whether the strokes can be taken into another day: gusts, where they are told on one of the two days only, want the hole opened afresh. */
  follows(day: Day): boolean {
    return windsOf(day).length === windsOf(this.opened).length;
  }

  /**
   * Takes another day into the strokes alone: what they lead to keeps the value that it had on the day the hole was solved for. Quick enough to follow a wind
   * that is being turned; a hole solved afresh is what it comes to.
   */
  followDay(day: Day): void {
    this.field.takeDay(day);
    this.weapons = new Map();
    this.moves++;
    this.solution = this.solutionNow(this.solution.status);
  }

  private solutionNow(status: SolveStatus): HoleSolution {
    const { field, sweeps, moves } = this;
    const { frame, raster, ground, day } = field;
    const query = new Query(field, sweeps, this.weapons);
    const policy = new Policy(field, sweeps.evaluator, sweeps.states);
    const cell = (p: PlanePoint): number => cellAt(raster, frame.u(p), frame.v(p));
    const now = (): Query => {
      if (this.moves !== moves) throw new RangeError('flag or wind have been moved since this was solved');
      return query;
    };
    return {
      ground,
      day,
      status,
      greenTakenAsFlat: field.greenSlope === undefined,
      heightAt: (p) => field.heightAt?.(frame.u(p), frame.v(p)) ?? 0,
      surfaceAt: (p) => SURFACES[raster.surface[cell(p)]!]!,
      areaAt: (p) => raster.area[cell(p)]!,
      isUnmapped: (p) => raster.area[cell(p)] === UNMAPPED,
      next: (p, from) => nextState(field, sweeps, now(), frame.u(p), frame.v(p), from),
      unplayable: (from) => dropState(field, now().here(from).unplayable),
      strokesAtRest: (p, from) => strokesAtRest(field, sweeps, now().here(from), frame.u(p), frame.v(p)),
      best: (from, withinStrokes = 0.5) => now().best(from, withinStrokes),
      bestOf: (from, option) => now().bestOf(from, option),
      strokesOf: (from, stroke) => now().strokesOf(from, stroke.option, stroke.bearingRad),
      placesOf: (from, stroke) => {
        const here = { u: frame.u(from.at), v: frame.v(from.at) };
        const weapon = query.weaponAtAim(stroke.option, LIE_CODES[from.lie]);
        return weapon && placesOf(field, here, weapon, stroke.bearingRad - frame.bearingRad);
      },
      scores: (from, stroke) => {
        const { u, v, lie, strokes } = now().here(from);
        const weapon = query.weaponAtAim(stroke.option, lie);
        if (weapon === undefined) return [];
        const first = { weapon, bearing: stroke.bearingRad - frame.bearingRad, strokes };
        return scoresFrom(field, sweeps, policy, { u, v, lie, value: strokes }, first);
      },
      playedFrom: (from) => {
        now();
        const found = policy.at(LIE_CODES[from.lie], frame.u(from.at), frame.v(from.at));
        const option = found && field.player.options[found.weapon.option];
        return option && { option, bearingRad: found.bearing + frame.bearingRad };
      },
      price: (from: BallState, stroke: Stroke): Priced => {
        const here = now().here(from);
        const weapon = query.weapon(stroke.option, here.lie);
        if (weapon === undefined)
          throw new RangeError(`${stroke.option.club} ${stroke.option.swing} has no pattern from ${from.lie}`);
        return price(field, sweeps, here, weapon, stroke);
      },
    };
  }
}

/** Whether a player has anything to play from the tee, and from grass after it. */
export const canPlay = (player: PlayerModel): boolean =>
  player.options.some((o) => o.byLie.tee) && player.options.some((o) => o.byLie.fairway ?? o.byLie.rough);
