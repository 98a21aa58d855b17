import { type Charted, type Scene, scene } from '@leeway/chart';
import { readPlayer } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import { distanceM, planHole, playerModel, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';

const SIZE = { widthPx: 690, heightPx: 768 };

/** Sheets of a made-up hole for a made-up player: the whole hole, and its last shot. */
export function sheetsOf(hole: string): { readonly hole: Scene; readonly shot: Scene } {
  const player = readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player).value;
  if (!player) throw new Error(`no player in ${DEMO.player}`);
  const model = playerModel(player);
  const mapped = groundOf(hole);
  const solution = solveHole(mapped.ground, model);
  const choices = planHole(solution, model).shots.map((s) => s.choice);
  const charted = { ...mapped, choices, strokesAtRest: solution.strokesAtRest.bind(solution) };
  return { hole: scene(charted, SIZE, 'yd'), shot: scene({ ...charted, shot: choices.length - 1 }, SIZE, 'yd') };
}

/** The sheet of a made-up hole without a player, its contours those of a plain rule: it stays the same while the solver is made better. */
export function unsolvedSheet(hole: string): Scene {
  const mapped = groundOf(hole);
  const { flag } = mapped.ground;
  return scene({ ...mapped, choices: [], strokesAtRest: (p) => 2 + distanceM(p, flag) / 110 }, SIZE, 'yd');
}

function groundOf(hole: string): Pick<Charted, 'ground' | 'course'> {
  const file = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground, { hole }).value;
  const ground = file?.holes.find((h) => h.hole === hole);
  if (!ground) throw new Error(`no hole ${hole} in ${DEMO.ground}`);
  return { ground, ...(file?.course === undefined ? {} : { course: file.course }) };
}
