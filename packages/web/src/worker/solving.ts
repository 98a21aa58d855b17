/** Everything that needs the solver. It comes when it is first used: a hole that was worked out beforehand is shown without it. */
export { holeAnswer, shotAnswer } from './answers.ts';
export { askOptions, askSpot } from './askSpot.ts';
export { askScores } from './askScores.ts';
export { keepAnswer } from './keep.ts';
export { followFlag, settleFlag } from './moveFlag.ts';
export { reopen, solveRead } from './openHole.ts';
