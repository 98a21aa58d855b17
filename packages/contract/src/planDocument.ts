import {
  type BagPlan,
  type Choice,
  type Doubt,
  doubtOf,
  fromFlag,
  lengthM,
  type HoleGround,
  type HolePlan,
  type PlannedShot,
  type PlanePoint,
  REFERENCE,
  type RulesInForce,
  type ShownStroke,
  type Nudge,
  type TodaysNumber,
  type Units,
  wordBecause,
  wordReason,
  wordStartLine,
} from '@leeway/engine';
import { dayDocument } from './day.ts';
import type { HoleDocument, PlanDocument, ShotDocument, StrokeDocument } from './plan.ts';
import { PLAN_VERSION } from './planVersion.ts';

/** What a plan document says besides its holes. */
export interface PlanHeading {
  readonly player: string;
  readonly course?: string;
  readonly attribution?: string;
  /** Units of the words; the figures are always in metres. */
  readonly units: Units;
  /** Whether chances of scores are worked out: thousands of holes are played for each stroke. */
  readonly scores?: boolean;
  readonly bag?: BagPlan;
}

const DEGREE_DECIMALS = 9;
const METRE_DECIMALS = 3;
const STROKE_DECIMALS = 6;
const CHANCE_DECIMALS = 9;
/** Chances of scores are known to a hundredth. */
const SCORE_DECIMALS = 3;

/** Plans of one hole or many as one document. `milliseconds` by hole is given only when timings are asked for. */
export function planDocument(
  plans: readonly HolePlan[],
  heading: PlanHeading,
  milliseconds: readonly number[] = [],
): PlanDocument {
  const { course, attribution } = heading;
  const holes = plans.map((plan, i) => holeDocument(plan, heading.units, milliseconds[i], heading.scores));
  return {
    version: PLAN_VERSION,
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    day: dayDocument(plans[0]?.solution.day ?? REFERENCE),
    player: { name: heading.player },
    ...rulesOf(plans[0]?.solution.ground.rules ?? {}),
    ...(heading.bag === undefined ? {} : { bag: bagDocument(heading.bag) }),
    ...(plans.length > 1 ? { round: roundDocument(plans.map(roundPart)) } : {}),
    holes,
  };
}

/** Holes that were planned one by one, as one document of a round. */
export function roundPlan(
  holes: readonly { readonly plan: HoleDocument; readonly part: RoundPart }[],
  heading: Pick<PlanHeading, 'player' | 'course' | 'attribution'>,
  day: PlanDocument['day'],
): PlanDocument {
  const { course, attribution, player } = heading;
  return {
    version: PLAN_VERSION,
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    day,
    player: { name: player },
    round: roundDocument(holes.map(({ part }) => part)),
    holes: holes.map(({ plan }) => plan),
  };
}

function rulesOf({ e5, lost }: RulesInForce): Pick<PlanDocument, 'rules'> {
  const trees = lost?.recovery ?? 0;
  const rough = lost?.rough ?? 0;
  if (e5 !== true && trees + rough === 0) return {};
  return {
    rules: {
      ...(e5 === true ? { e5: true as const } : {}),
      ...(trees > 0 ? { lostInTrees: trees } : {}),
      ...(rough > 0 ? { lostInRough: rough } : {}),
    },
  };
}

/** A club without which the holes cannot be played has no worth in strokes. */
const bagDocument = ({ carriedStrokes, worth, carry, leave }: BagPlan): NonNullable<PlanDocument['bag']> => ({
  expectedStrokes: round(carriedStrokes, STROKE_DECIMALS),
  clubs: worth.map(({ club, strokes, earns }) => ({
    club,
    worthStrokes: Number.isFinite(strokes) ? round(strokes, STROKE_DECIMALS) : null,
    earns,
  })),
  carry: [...carry],
  leave: [...leave],
});

/** What one hole brings to a round: its par and strokes, what is doubtful of them, and the fewest balls that any of its shots leans on. */
export interface RoundPart {
  readonly par: number;
  readonly expectedStrokes: number;
  readonly nudges: readonly Nudge[];
  readonly balls: number;
}

export function roundPart({ shots, solution }: HolePlan): RoundPart {
  const shown = shots.map((shot) => shot.choice.answer);
  return {
    par: solution.ground.par,
    expectedStrokes: shown[0]?.strokes ?? 0,
    nudges: shown.flatMap(({ nudges }) => nudges),
    balls: Math.min(...shown.map(({ priced }) => priced.option.doubt.balls)),
  };
}

/** Of all holes together. What two holes have in doubt alike adds up; what they do not, adds in squares. */
export function roundDocument(parts: readonly RoundPart[]): NonNullable<PlanDocument['round']> {
  const expected = parts.reduce((sum, part) => sum + part.expectedStrokes, 0);
  const balls = parts.length === 0 ? 0 : Math.min(...parts.map((part) => part.balls));
  const nudges = parts.flatMap((part) => part.nudges);
  return {
    par: parts.reduce((sum, part) => sum + part.par, 0),
    expectedStrokes: round(expected, STROKE_DECIMALS),
    doubt: doubtDocument(doubtOf(expected, nudges, { doubt: { balls } })),
  };
}

/** One hole of a plan. */
export function holeDocument(plan: HolePlan, units: Units, milliseconds?: number, scores = false): HoleDocument {
  const { ground, status } = plan.solution;
  const [first] = plan.shots;
  if (first === undefined) throw new RangeError('A plan without shots has no document.');
  const shots = plan.shots.map((shot) => shotDocument(shot, ground, units, scores));
  return {
    hole: ground.hole,
    ...(ground.name === undefined ? {} : { name: ground.name }),
    par: ground.par,
    ...(ground.parGuessed ? { parGuessed: true as const } : {}),
    lengthM: round(lengthM(ground.line), METRE_DECIMALS),
    ...(ground.heights === undefined ? {} : { heights: ground.heights.from }),
    flag: { ...geo(ground, ground.flag), from: ground.flagFrom },
    expectedStrokes: round(first.choice.answer.strokes, STROKE_DECIMALS),
    doubt: doubtDocument(first.doubtOf(first.choice.answer)),
    ...(plan.solution.greenTakenAsFlat ? { greenTakenAsFlat: true as const } : {}),
    solver: {
      states: status.states,
      options: status.options,
      sweeps: status.sweeps,
      residual: round(status.residual, STROKE_DECIMALS),
      converged: status.converged,
      ...(milliseconds === undefined ? {} : { milliseconds: round(milliseconds, 1) }),
    },
    shots,
    ...(plan.stuck === undefined ? {} : { endsEarly: `no way on was found from ${plan.stuck.lie}` }),
  };
}

/** One shot of a plan. */
export function shotDocument(shot: PlannedShot, ground: HoleGround, units: Units, scores = false): ShotDocument {
  const { choice } = shot;
  const { answer, plain, number } = choice;
  const stroke = (shown: ShownStroke): StrokeDocument => strokeDocument(shot, ground, shown);
  const { option, aim, spot, expectedStrokes, doubt, flagged } = stroke(answer);
  const plainLine = plain && {
    option: named(plain.shown),
    expectedStrokes: round(plain.shown.strokes, STROKE_DECIMALS),
    doubt: doubtDocument(shot.doubtOf(plain.shown)),
  };
  return {
    from: geo(ground, choice.from.at),
    lie: choice.from.lie,
    ...(shot.dropped ? { dropped: true as const } : {}),
    toFlagM: round(choice.toFlagM, METRE_DECIMALS),
    landsM: round(choice.landsM, METRE_DECIMALS),
    finishesM: round(choice.finishesM, METRE_DECIMALS),
    todaysNumber: numberDocument(number),
    option,
    evidence: answer.priced.option.evidence,
    aim,
    spot,
    ...(choice.startLine === undefined ? {} : { startLine: wordStartLine(choice.startLine, units) }),
    expectedStrokes,
    doubt,
    ...(flagged === undefined ? {} : { flagged }),
    ...(plainLine === undefined ? {} : plain?.kind === 'flag' ? { atFlag: plainLine } : { middleOfFairway: plainLine }),
    chances: chancesDocument(answer),
    ...(scores ? scoresDocument(shot, answer) : {}),
    room: choice.room.map((arms) => ({
      more: arms.more,
      leftM: arm(arms.leftM),
      rightM: arm(arms.rightM),
      shortM: arm(arms.shortM),
      longM: arm(arms.longM),
    })),
    proximity: {
      meanM: round(answer.priced.proximityMeanM, METRE_DECIMALS),
      medianM: round(answer.priced.proximityMedianM, METRE_DECIMALS),
    },
    reasons: choice.reasons.map((reason) => wordReason(reason, choice, ground, units)),
    alternatives: choice.alternatives.map(({ shown, because, putts }) => ({
      ...stroke(shown),
      ...(scores ? scoresDocument(shot, shown) : {}),
      costsMore: more(choice, shown),
      why: wordBecause(because, '', units),
      ...(putts ? { tie: true as const } : {}),
    })),
    ...(choice.simplest === undefined ? {} : { simplest: stroke(choice.simplest) }),
    ...(choice.settling === undefined
      ? {}
      : {
          wouldSettle: {
            club: choice.settling.option.club,
            swing: choice.settling.option.swing,
            balls: choice.settling.balls,
          },
        }),
    ...(choice.heldBack === undefined ? {} : { heldBack: stroke(choice.heldBack) }),
    ...(choice.named.length === 0
      ? {}
      : {
          named: choice.named.map((shown) => ({
            ...stroke(shown),
            costsMore: more(choice, shown),
            chances: chancesDocument(shown),
          })),
        }),
    ...(choice.worthLearning.length === 0
      ? {}
      : {
          worthLearning: choice.worthLearning.map((lesson) => ({
            ...stroke(lesson.shown),
            savesStrokes: round(lesson.savesStrokes, STROKE_DECIMALS),
          })),
        }),
  };
}

function numberDocument({ doubt, ...number }: TodaysNumber): ShotDocument['todaysNumber'] {
  const m = (metres: number): number => round(metres, METRE_DECIMALS);
  const about = (name: keyof typeof doubt) => {
    const part = doubt[name];
    return part === undefined ? {} : { [name]: { lo80: m(part.lo80), hi80: m(part.hi80) } };
  };
  const parts = { ...about('wind'), ...about('slope'), ...about('air') };
  return {
    toLandingM: m(number.toLandingM),
    windM: m(number.windM),
    slopeM: m(number.slopeM),
    airM: m(number.airM),
    lieM: m(number.lieM),
    playsM: m(number.playsM),
    ...(Object.keys(parts).length === 0 ? {} : { doubt: parts }),
  };
}

function strokeDocument(shot: PlannedShot, ground: HoleGround, shown: ShownStroke): StrokeDocument {
  const mark = (at: PlanePoint) => {
    const { beyondFlagM, rightOfFlagM } = fromFlag(shot.choice, ground, { spot: at });
    return {
      ...geo(ground, at),
      beyondFlagM: round(beyondFlagM, METRE_DECIMALS),
      rightOfFlagM: round(rightOfFlagM, METRE_DECIMALS),
    };
  };
  return {
    option: named(shown),
    aim: mark(shown.aim),
    spot: mark(shown.spot),
    expectedStrokes: round(shown.strokes, STROKE_DECIMALS),
    doubt: doubtDocument(shot.doubtOf(shown)),
    ...(shown.flagged.length === 0
      ? {}
      : {
          flagged: shown.flagged.map(({ kind, name, id }) => ({ kind, ...(name === undefined ? {} : { name }), id })),
        }),
  };
}

const named = (shown: ShownStroke) => ({ club: shown.priced.option.club, swing: shown.priced.option.swing });

const more = (choice: Choice, shown: ShownStroke): number =>
  round(shown.strokes - choice.answer.strokes, STROKE_DECIMALS);

const arm = (m: number | null): number | null => (m === null ? null : round(m, METRE_DECIMALS));

function chancesDocument(shown: ShownStroke): ShotDocument['chances'] {
  const { green, fairway, rough, bunker, penalty, outOfBounds, recovery, unmapped } = shown.priced.chances;
  const r = (chance: number): number => round(chance, CHANCE_DECIMALS);
  return {
    green: r(green),
    fairway: r(fairway),
    rough: r(rough),
    bunker: r(bunker),
    penalty: r(penalty),
    outOfBounds: r(outOfBounds),
    recovery: r(recovery),
    unmapped: r(unmapped),
  };
}

function scoresDocument(shot: PlannedShot, shown: ShownStroke): Pick<ShotDocument, 'scores'> {
  const scores = shot.scoresOf?.(shown);
  if (scores === undefined) return {};
  const r = (chance: number): number => Math.min(1, round(chance, SCORE_DECIMALS));
  return { scores: { parOrBetter: r(scores.parOrBetter), doubleOrWorse: r(scores.doubleOrWorse) } };
}

const doubtDocument = (doubt: Doubt): Doubt => ({
  se: round(doubt.se, STROKE_DECIMALS),
  balls: doubt.balls,
  lo80: round(doubt.lo80, STROKE_DECIMALS),
  hi80: round(doubt.hi80, STROKE_DECIMALS),
});

function geo(ground: HoleGround, at: PlanePoint): { lon: number; lat: number } {
  const { lon, lat } = ground.frame.toGeo(at);
  return { lon: round(lon, DEGREE_DECIMALS), lat: round(lat, DEGREE_DECIMALS) };
}

/** Rounded to so many decimals, never minus nought. */
function round(n: number, decimals: number): number {
  const rounded = Number(n.toFixed(decimals));
  return rounded === 0 ? 0 : rounded;
}
