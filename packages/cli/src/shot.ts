import { shotDocument } from '@leeway/contract';
import {
  type BallState,
  type HoleGround,
  insidePolygon,
  type Lie,
  LIES,
  distanceToLineM,
  planFrom,
  type PlanePoint,
  type Surface,
  solveHole,
} from '@leeway/engine';
import { shotNote } from './caddie.ts';
import type { Command, Given, Io } from './command.ts';
import { Usage } from './command.ts';
import { aimedStrokes, namedStrokes } from './planAlso.ts';
import { needed, PLAN_OPTIONS, readPlanInput, refuse, tellFaults } from './planInput.ts';
import { parseLonLat } from './quantities.ts';

/** A ball farther than this from the hole line is not on this hole. */
const FARTHEST_M = 300;

/** `leeway shot`: the choice for one ball. */
export const shot: Command = {
  name: 'shot',
  summary: 'the choice for one shot from anywhere on a hole',
  usage: [
    'leeway shot --ground FILE --hole N --player FILE --from LON,LAT [--lie LIE] [--flag PLACE] [--also CLUB@PLACE] [the day] [--json]',
  ],
  examples: [
    'leeway shot --ground course.osm --hole 7 --player kim.json --from -3.1012,54.2031 --lie rough',
    'leeway shot --ground course.osm --hole 7 --player kim.json --from -3.1012,54.2031 --also "8i@-3.1,54.2035"',
  ],
  options: {
    ...PLAN_OPTIONS,
    from: { kind: 'text', value: 'LON,LAT', help: 'where the ball lies' },
    lie: { kind: 'text', value: 'LIE', help: `${LIES.join(', ')}; as mapped unless said` },
  },
  run: runShot,
};

async function runShot(given: Given, io: Io): Promise<number> {
  needed(given, 'hole');
  const from = parseLonLat('from', needed(given, 'from'));
  const stated = statedLie(given);
  const input = await readPlanInput(given, io);
  const [ground] = input?.holes ?? [];
  if (input === undefined || ground === undefined) return 1;
  const at = ground.frame.toPlane(from);
  const awayM = distanceToLineM(at, ground.line);
  if (!(awayM <= FARTHEST_M)) {
    refuse(
      io,
      'far-from-hole',
      '--from',
      `a place ${inWords(awayM)} from hole ${ground.hole}`,
      'a place on the hole, longitude first',
    );
    return 1;
  }
  const mapped = topmost(ground, at);
  if (stated === undefined && (mapped === 'green' || mapped === 'out')) {
    const found = `a ball on ground mapped as ${mapped === 'out' ? 'out of bounds' : 'green'}`;
    refuse(io, 'no-stroke', '--from', found, 'a ball that is played with a club of the plan, or --lie');
    return 1;
  }
  const lie = stated ?? lieOn(mapped);
  if (input.player.options.every((o) => o.byLie[lie] === undefined)) {
    refuse(io, 'no-stroke', '--lie', `${input.player.name} has no option from lie ${lie}`, 'a pattern from that lie');
    return 1;
  }
  const state: BallState = { at, lie };
  const named = namedStrokes(given.texts('also'), input.player, ground, state);
  if (named.value === undefined) {
    tellFaults(named.faults, io, input.groundPath);
    return 1;
  }
  const solution = solveHole(ground, input.player, input.day);
  const [planned] = planFrom(solution, input.player, state, aimedStrokes(named.value, solution, state)).shots;
  if (planned === undefined) {
    refuse(io, 'no-stroke', '--from', `no stroke to play from lie ${lie}`, 'a place that the hole can be played from');
    return 1;
  }
  const document = shotDocument(planned, ground, input.units);
  const note = [
    ...shotNote(document, input.units),
    ...((input.ground.attribution ?? '') ? [input.ground.attribution] : []),
  ];
  io.out(given.flag('json') ? `${JSON.stringify(document)}\n` : `${note.join('\n')}\n`);
  return 0;
}

function statedLie(given: Given): Lie | undefined {
  const text = given.text('lie');
  if (text === undefined) return undefined;
  const lie = LIES.find((l) => l === text.trim().toLowerCase());
  if (lie === undefined) throw new Usage(`--lie: found "${text}"; expected one of ${LIES.join(', ')}`);
  return lie;
}

/** What the map says a place is: its topmost area; rough where nothing is drawn. */
const topmost = (ground: HoleGround, at: PlanePoint): Surface =>
  ground.areas.findLast((area) => insidePolygon(at, area.polygon))?.surface ?? 'rough';

/** A ball at rest in a tee area plays as fairway. */
const lieOn = (surface: Surface): Lie =>
  surface === 'tee' || surface === 'green' || surface === 'out' ? 'fairway' : surface;

const inWords = (metres: number): string =>
  metres < 5000 ? `${Math.round(metres)} m` : `${Math.round(metres / 1000)} km`;
