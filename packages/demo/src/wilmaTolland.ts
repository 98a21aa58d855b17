import { type MadeUpPlayer, trueSwings } from './madeUpPlayer.ts';

/** A made-up woman off 26 with few clubs, whose long ones carry much alike. */
export const WILMA_TOLLAND: MadeUpPlayer = {
  file: 'wilma-tolland',
  name: 'Wilma Tolland',
  hand: 'right',
  sex: 'woman',
  handicapIndex: 26,
  seed: 2609,
  clubs: [
    { name: 'driver', loftDeg: 13, claimedYd: 150 },
    { name: '5-wood', loftDeg: 19 },
    { name: '7-wood', loftDeg: 22 },
    { name: '5-hybrid', loftDeg: 26 },
    { name: '7-iron', loftDeg: 33, claimedYd: 105 },
    { name: '8-iron', loftDeg: 37 },
    { name: '9-iron', loftDeg: 41, claimedYd: 90 },
    { name: 'PW', loftDeg: 46 },
    { name: 'SW', loftDeg: 55, swings: ['half'] },
  ],
  swings: trueSwings(0.085, [
    { club: 'driver', balls: 40, carryYd: 133, directionDeg: 2.2, sdDirectionDeg: 7.6, mishitShare: 0.22 },
    { club: '5-wood', balls: 26, carryYd: 121, directionDeg: 1.8, sdDirectionDeg: 7, mishitShare: 0.3 },
    { club: '7-wood', balls: 24, carryYd: 117, directionDeg: 1.6, sdDirectionDeg: 6.7, mishitShare: 0.27 },
    { club: '5-hybrid', balls: 28, carryYd: 110, directionDeg: 1.4, sdDirectionDeg: 6.2, mishitShare: 0.26 },
    { club: '7-iron', balls: 44, carryYd: 97, directionDeg: 1.2, sdDirectionDeg: 5.2, mishitShare: 0.24 },
    { club: '8-iron', balls: 30, carryYd: 90, directionDeg: 1.1, sdDirectionDeg: 5, mishitShare: 0.22 },
    { club: '9-iron', balls: 30, carryYd: 82, directionDeg: 1, sdDirectionDeg: 4.9, mishitShare: 0.22 },
    { club: 'PW', balls: 34, carryYd: 74, directionDeg: 0.9, sdDirectionDeg: 4.8, mishitShare: 0.2 },
    { club: 'SW', balls: 28, carryYd: 56, directionDeg: 0.6, sdDirectionDeg: 4.9, mishitShare: 0.21 },
    { club: 'SW', swing: 'half', balls: 20, carryYd: 36, directionDeg: 0.4, sdDirectionDeg: 4.6, mishitShare: 0.18 },
  ]),
};
