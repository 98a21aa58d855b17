import { readFileSync } from 'node:fs';
import { type Fault, planDocument, type PlanDocument, type Read, readPlayer, wordFault } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import { planHole, playerModel, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';

/** The hole of the made-up course that the app opens on. */
const OPENING_HOLE = '7';

/** The plan of that hole for the made-up player, solved here and now. Throws when the demo's own files do not read. */
export function demoPlan(): PlanDocument {
  const ground = valueOf(readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground));
  const player = playerModel(valueOf(readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player)));
  const plans = ground.holes
    .filter(({ hole }) => hole === OPENING_HOLE)
    .map((hole) => planHole(solveHole(hole, player), player));
  const { course, attribution } = ground;
  return planDocument(plans, {
    player: player.name,
    units: 'yd',
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
  });
}

function valueOf<T>({ value, faults }: Read<T>): T {
  if (value === undefined) throw new Error(faults.map((fault: Fault) => wordFault(fault)).join('\n'));
  return value;
}
