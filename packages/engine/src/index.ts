export * from './quantity/units.ts';
export * from './quantity/points.ts';
export * from './quantity/lies.ts';
export * from './ground/hole.ts';
export * from './ground/heights.ts';
export * from './ground/rules.ts';
export * from './player/option.ts';
export * from './value/solution.ts';
export * from './geometry/polygon.ts';
export * from './geometry/segment.ts';
export * from './geometry/frame.ts';
export * from './geometry/innerCentre.ts';
export * from './geometry/rings.ts';
export * from './geometry/clip.ts';
export * from './ground/paint.ts';
export * from './ground/boundary.ts';
export * from './ground/par.ts';
export * from './ground/flag.ts';
export * from './ground/mapped.ts';
export * from './player/club.ts';
export * from './player/file.ts';
export * from './player/model.ts';
export * from './player/prior.ts';
export * from './player/mishitChance.ts';
export * from './player/run.ts';
export * from './player/ability.ts';
export * from './player/session.ts';
export * from './player/ladder.ts';
export * from './stats/ball.ts';
export * from './stats/sample.ts';
export * from './stats/twoPart.ts';
export * from './stats/twoPartModel.ts';
export * from './stats/rankCorrelation.ts';
export * from './player/carryTable.ts';
export {
  type Asked,
  type CarryKnown,
  type Enough,
  enough,
  type Hitter,
  type KnownSoFar,
  type NextBalls,
  SESSION_CAP,
} from './player/enough.ts';
export * from './player/sessionOrder.ts';
export * from './player/tiring.ts';
export * from './player/outOfPlace.ts';
export * from './math/random.ts';
export * from './choice/doubt.ts';
export * from './choice/choose.ts';
export type { TodaysNumber } from './choice/number.ts';
export * from './choice/shown.ts';
export * from './choice/scores.ts';
export type { Settling } from './choice/settle.ts';
export { bearingRad, offsetOf, placeAt } from './choice/view.ts';
export * from './choice/strokeTo.ts';
export * from './choice/words.ts';
export * from './choice/wordReason.ts';
export * from './plan/planHole.ts';
export type { NextBall } from './plan/relief.ts';
export * from './plan/ways.ts';
export * from './plan/bag.ts';
export * from './plan/tees.ts';
export type { Way } from './value/way.ts';
export type { ScoreChances } from './value/scoreChances.ts';
export * from './value/wayPlayed.ts';
export * from './reach/reach.ts';
export * from './value/solve.ts';
export * from './study/study.ts';
export * from './flight/launch.ts';
export * from './flight/fly.ts';
export * from './flight/path.ts';
export * from './flight/surfaces.ts';
export * from './flight/runOut.ts';
export * from './flight/family.ts';
export * from './flight/calibrate.ts';
export * from './flight/known.ts';
export * from './flight/variants.ts';
export * from './flight/strike.ts';
export * from './day/day.ts';
export * from './day/possible.ts';
export * from './day/normalise.ts';
export * from './day/rangeBall.ts';
export * from './day/todaysNumber.ts';
export * from './day/printedNumber.ts';
export * from './ledger/account.ts';
export * from './ledger/aims.ts';
export * from './ledger/baseline.ts';
export * from './ledger/choiceHabits.ts';
export * from './ledger/choiceLoss.ts';
export * from './ledger/execution.ts';
export * from './ledger/gained.ts';
export * from './ledger/handicap.ts';
export * from './ledger/left.ts';
export * from './ledger/played.ts';
export * from './ledger/virtualHole.ts';
