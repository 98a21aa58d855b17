import { type Scene, scene } from '@leeway/chart';
import { readPlayer } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import { planHole, playerModel, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';

const SIZE = { widthPx: 690, heightPx: 768 };

/** Sheets of a made-up hole for a made-up player: the whole hole, and its last shot. */
export function sheetsOf(hole: string): { readonly hole: Scene; readonly shot: Scene } {
  const player = readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player).value;
  const file = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground, { hole }).value;
  const ground = file?.holes.find((h) => h.hole === hole);
  if (!player || !ground) throw new Error(`no hole ${hole} or no player among the made-up ones`);
  const model = playerModel(player);
  const solution = solveHole(ground, model);
  const choices = planHole(solution, model).shots.map((s) => s.choice);
  const charted = {
    ground,
    ...(file?.course === undefined ? {} : { course: file.course }),
    choices,
    strokesAtRest: solution.strokesAtRest.bind(solution),
  };
  return { hole: scene(charted, SIZE, 'yd'), shot: scene({ ...charted, shot: choices.length - 1 }, SIZE, 'yd') };
}
