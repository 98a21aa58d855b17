import { choose, type Choice } from '../choice/choose.ts';
import { type Day, REFERENCE } from '../day/day.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, Grade, HoleSolution } from '../value/solution.ts';
import { OpenHole } from '../value/solve.ts';

const sameDay = (a: Day, b: Day): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * One hole held open for one player, so that a moved flag costs less than a hole solved afresh. Two studies share nothing that is written
 * to. Its `solution` is good until the flag is moved again, and throws when it is asked for strokes after that.
 */
export class Study {
  readonly player: PlayerModel;
  private open: OpenHole;
  /** The day that the values of the hole are for. */
  private solvedFor: Day;
  private mixed = false;

  constructor(ground: HoleGround, player: PlayerModel, day: Day = REFERENCE) {
    this.player = player;
    this.open = new OpenHole(ground, player, day);
    this.solvedFor = day;
  }

  get ground(): HoleGround {
    return this.open.solution.ground;
  }

  get day(): Day {
    return this.solution.day;
  }

  get solution(): HoleSolution {
    return this.open.solution;
  }

  /**
   * Puts the flag at a place of the hole's plane. `following` answers for a ball at `from` and those nearer the flag; without it, for all.
   * Far from the green the hole is solved from scratch, whatever the grade.
   */
  moveFlag(flag: PlanePoint, grade: Grade = 'settled', from?: PlanePoint): void {
    const ground: HoleGround = { ...this.ground, flag, flagFrom: 'given' };
    const followed = !sameDay(this.day, this.solvedFor);
    if (this.open.holds(flag) && !(followed && grade === 'settled')) {
      // values that follow the flag in a wind that is only followed are for neither day
      if (followed) this.mixed = true;
      this.open.moveFlag(ground, grade, from);
    } else {
      this.open = new OpenHole(ground, this.player, this.day);
      this.solvedFor = this.day;
      this.mixed = false;
    }
  }

  /**
   * Takes another day: its wind, air and ground. `following` moves the strokes of the moment alone, the rest of the hole being played as on the day that it was last
   * solved for; settled, the hole is solved from scratch.
   */
  turnWind(day: Day, grade: Grade = 'settled'): void {
    const known = grade === 'following' || (sameDay(day, this.solvedFor) && !this.mixed);
    if (known && this.open.follows(day)) {
      if (!sameDay(day, this.day)) this.open.followDay(day);
      return;
    }
    this.open = new OpenHole(this.ground, this.player, day);
    this.solvedFor = day;
    this.mixed = false;
  }

  /** The choice from a state; `undefined` when nothing can be played from its lie. */
  ask(from: BallState): Choice | undefined {
    return choose(this.solution, this.player, from);
  }
}
