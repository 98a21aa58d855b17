import { YARD_M } from '@leeway/engine';
import type { BallsOfSwing, MadeUpPlayer } from './madeUpPlayer.ts';

const full = (
  club: string,
  balls: number,
  carryYd: number,
  sdDirectionDeg: number,
  mishitShare: number,
  directionDeg = 0.7,
) => swung(club, 'full', balls, carryYd, sdDirectionDeg, mishitShare, directionDeg);

function swung(
  club: string,
  swing: string,
  balls: number,
  carryYd: number,
  sdDirectionDeg: number,
  mishitShare: number,
  directionDeg = 0.7,
): BallsOfSwing {
  const carryM = carryYd * YARD_M;
  return { club, swing, balls, carryM, sdCarryM: 0.062 * carryM, directionDeg, sdDirectionDeg, mishitShare };
}

/** Her true swings and how many balls of each she hit. */
const SWINGS: readonly BallsOfSwing[] = [
  full('driver', 44, 211, 5.6, 0.13, 1.4),
  full('3-wood', 12, 190, 5.4, 0.19),
  full('5-wood', 14, 178, 5, 0.18),
  full('5-hybrid', 18, 163, 4.8, 0.18),
  full('6-iron', 24, 149, 4, 0.16),
  full('7-iron', 46, 139, 3.9, 0.14),
  swung('7-iron', 'three-quarter', 20, 123, 3.4, 0.1),
  full('8-iron', 38, 128, 3.7, 0.13),
  full('9-iron', 30, 117, 3.6, 0.13),
  full('PW', 34, 106, 3.6, 0.12),
  swung('PW', 'three-quarter', 22, 93, 3.2, 0.09),
  full('50°', 24, 95, 3.6, 0.12),
  full('54°', 26, 84, 3.6, 0.12),
  swung('54°', 'half', 18, 58, 3.4, 0.1),
  full('58°', 6, 71, 3.8, 0.14),
];

/** A made-up player off 14 who starts the ball a little right and comes up short of what she believes. */
export const ODILE_VARGA: MadeUpPlayer = {
  file: 'odile-varga',
  name: 'Odile Varga',
  hand: 'right',
  handicapIndex: 14,
  seed: 1407,
  clubs: [
    { name: 'driver', loftDeg: 10.5, claimedYd: 230 },
    { name: '3-wood', loftDeg: 15 },
    { name: '5-wood', loftDeg: 18 },
    { name: '5-hybrid', loftDeg: 25 },
    { name: '6-iron', loftDeg: 29 },
    { name: '7-iron', loftDeg: 33, claimedYd: 150, swings: ['three-quarter'] },
    { name: '8-iron', loftDeg: 37, claimedYd: 138 },
    { name: '9-iron', loftDeg: 41 },
    { name: 'PW', loftDeg: 45, swings: ['three-quarter'] },
    { name: '50°', loftDeg: 50 },
    { name: '54°', loftDeg: 54, swings: ['half'] },
    { name: '58°', loftDeg: 58 },
  ],
  swings: SWINGS,
};
