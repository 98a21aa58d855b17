import type { Day } from '../day/day.ts';
import { readClub } from '../player/club.ts';
import type { ClubFlight, Option, Pattern } from '../player/option.ts';
import { ClubToday, isReference } from './clubToday.ts';
import { windsOf, type Met } from './gusts.ts';
import { PatternToday } from './patternToday.ts';

/** The loft that a club is taken to have when neither the file nor its name tells: by its carry, as a usual bag has it. */
const loftByCarryDeg = (carryM: number): number => Math.min(60, Math.max(10, 68 - 0.24 * carryM));

/** Landings above and below the ball are flown at this share of the greatest difference on the hole, and at all of it. */
const SHARES = [-1, -0.5, 0, 0.5, 1];
const LEVEL = [0];

/**
 * Where every stroke of a player goes today, from any lie, in any direction, up or down: worked out as it is asked for and kept. It belongs to one hole
 * and one day. `climbM` is the greatest difference in height on the hole; nought for level ground.
 */
export class Reach {
  readonly day: Day;
  /** The winds that a ball may meet, the mean one first: more than one where gusts are told. */
  readonly winds: readonly [Met, ...Met[]];
  private readonly heightsM: readonly number[];
  private readonly clubs = new Map<string, { clubs: readonly ClubToday[]; patterns: WeakMap<Pattern, PatternToday> }>();

  private constructor(day: Day, climbM: number) {
    this.day = day;
    this.winds = windsOf(day);
    this.heightsM = climbM > 0 ? SHARES.map((share) => share * climbM) : LEVEL;
  }

  /** `undefined` where every stroke goes as on the reference day. */
  static on(day: Day, climbM = 0): Reach | undefined {
    return isReference(day) && !(climbM > 0) ? undefined : new Reach(day, climbM);
  }

  /** A pattern of an option as the day moves it. Its figures are set for one aim line at a time. */
  of(option: Pick<Option, 'club' | 'flight'>, pattern: Pattern): PatternToday {
    const { day, heightsM, winds } = this;
    const flight = flightOf(option, pattern);
    const key = `${flight.loftDeg} ${flight.tag ?? ''}`;
    let known = this.clubs.get(key);
    if (known === undefined) {
      known = { clubs: winds.map((met) => new ClubToday(flight, met.day, heightsM)), patterns: new WeakMap() };
      this.clubs.set(key, known);
    }
    let found = known.patterns.get(pattern);
    if (found === undefined)
      known.patterns.set(pattern, (found = new PatternToday(pattern, winds, known.clubs, day, heightsM)));
    return found;
  }
}

/** What is known of how an option's ball flies. */
export const flightOf = ({ club, flight }: Pick<Option, 'club' | 'flight'>, pattern: Pattern): ClubFlight =>
  flight ?? { loftDeg: readClub(club)?.loftDeg ?? loftByCarryDeg(pattern.parts[0]?.alongM ?? 0) };
