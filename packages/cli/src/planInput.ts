import { CAP_BYTES, readTextCapped } from './files.ts';
import { type Fault, type GroundFile, readPlayer, wordFault } from '@leeway/contract';
import {
  bagOf,
  canPlay,
  type Day,
  handicapIndexOf,
  type HoleGround,
  isStated,
  type PlayerFile,
  playerModel,
  STANDARD_BAG,
  type PlayerModel,
} from '@leeway/engine';
import { readAsciiGrid, readGround } from '@leeway/formats';
import type { Given, Io, OptionSpec } from './command.ts';
import { Usage } from './command.ts';
import { DAY_OPTIONS, Door, readDay } from './day.ts';
import { DATA_OPTION } from './data.ts';
import { inputTexts } from './inputTexts.ts';
import { parsePlace } from './planPlace.ts';
import { readRules, RULES_OPTIONS } from './rules.ts';
import { parseWhole, type Units, UNITS_OPTION, unitsOf } from './quantities.ts';

/** Options that `plan` and `shot` share. */
export const PLAN_OPTIONS = {
  ground: { kind: 'text', value: 'FILE', help: 'mapped ground: GeoJSON, OSM XML, or the JSON of an OSM query' },
  player: { kind: 'text', value: 'FILE', help: 'the player file' },
  data: DATA_OPTION,
  hole: { kind: 'text', value: 'N', help: 'the hole to plan' },
  flag: { kind: 'text', value: 'PLACE', help: 'LON,LAT, or paces on from the front and in from a side: 16,7R' },
  heights: {
    kind: 'text',
    value: 'FILE',
    help: 'heights of the ground: an ASCII grid in degrees; else spot heights (ele) of the map',
  },
  also: {
    kind: 'text',
    value: 'CLUB[, SWING]@PLACE',
    many: true,
    help: 'price this stroke beside the answer, its spot at LON,LAT or 16,7R',
  },
  units: UNITS_OPTION,
  seed: { kind: 'text', value: 'N', help: 'fixes every random choice; a plan makes none' },
  timings: { kind: 'flag', help: 'tell how long each hole took to solve' },
  ...RULES_OPTIONS,
  ...DAY_OPTIONS,
} as const satisfies { readonly [name: string]: OptionSpec };

/** What a plan is made from. */
export interface PlanInput {
  readonly units: Units;
  readonly player: PlayerModel;
  readonly day: Day;
  readonly ground: GroundFile;
  readonly groundPath: string;
  readonly holes: readonly HoleGround[];
}

const MOST_NOTES = 12;
const LARGEST_SEED = 2 ** 31;

/** Reads and checks everything; `undefined` when something was refused, which has been told. Throws `Usage`. */
export async function readPlanInput(given: Given, io: Io): Promise<PlanInput | undefined> {
  const units = unitsOf(given);
  const door = new Door();
  const day = readDay(given, units, door);
  const rules = readRules(given);
  const seed = given.text('seed');
  if (seed !== undefined) parseWhole('seed', seed, [0, LARGEST_SEED]);
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const groundPath = needed(given, 'ground');
  const playerPath = needed(given, 'player');
  const hole = given.text('hole');
  const flagText = given.text('flag');
  if (flagText !== undefined && hole === undefined)
    throw new Usage('--flag needs --hole N: a flag belongs to one hole');
  const flag = flagText === undefined ? undefined : parsePlace('flag', flagText);

  const texts = await inputTexts(given, io);
  if (texts === undefined) return undefined;
  const { player: playerText, ground: groundText } = texts;
  const file = playerText.value === undefined ? undefined : readPlayer(playerText.value, playerPath);
  const heightsPath = given.text('heights');
  const heightsText = heightsPath === undefined ? undefined : await readTextCapped(heightsPath, CAP_BYTES.ground);
  const raster = heightsText?.value === undefined ? undefined : readAsciiGrid(heightsText.value, heightsPath ?? '');
  const ground =
    groundText.value === undefined
      ? undefined
      : readGround(groundText.value, groundPath, {
          ...(hole === undefined ? {} : { hole }),
          ...(flag === undefined ? {} : { flag }),
          ...(raster?.value === undefined ? {} : { heights: raster.value }),
        });
  const faults = [heightsText, raster, playerText, file, groundText, ground].flatMap((read) => read?.faults ?? []);
  tellFaults(faults, io, groundPath);
  tellFaults(door.faults, io, groundPath);
  if (door.faults.length > 0) return undefined;
  if (file?.value === undefined || ground?.value === undefined || faults.some((f) => f.level === 'refused')) {
    return undefined;
  }
  const asked = hole === undefined ? ground.value.holes : ground.value.holes.filter((h) => h.hole === hole);
  const holes = asked.map((h) => ({ ...h, rules }));
  if (holes.length === 0) {
    const numbers = ground.value.holes.map((h) => h.hole).join(', ');
    const found = hole === undefined ? 'no hole' : `hole ${hole}`;
    return refuse(io, 'no-such-hole', groundPath, found, numbers === '' ? 'a hole' : `one of ${numbers}`);
  }
  tellFaults(assumed(file.value, playerPath), io, playerPath);
  const player = playerModel(file.value);
  if (!canPlay(player)) {
    return refuse(
      io,
      'cannot-play',
      playerPath,
      'no pattern from the tee, or none from the fairway',
      'patterns from both',
    );
  }
  if (day.ground.firmness === undefined && !day.ground.wet && !day.ground.frozen && runsOn(player)) {
    const done = 'normal firmness is assumed';
    tellFaults(
      [
        {
          code: 'assumed-firmness',
          level: 'note',
          file: '--firmness',
          found: 'nothing',
          expected: 'soft, normal or firm',
          done,
        },
      ],
      io,
      groundPath,
    );
  }
  return { units, player, day, ground: ground.value, groundPath, holes };
}

/** Whether any ball of a player runs on after it has pitched. */
const runsOn = (player: PlayerModel): boolean =>
  player.options.some((o) => Object.values(o.byLie).some((pattern) => !pattern.rest));

/** What a Player file leaves to be assumed. */
function assumed(player: PlayerFile, file: string): Fault[] {
  if (isStated(player)) return [];
  const note = (code: string, found: string, expected: string, done: string): Fault => ({
    code,
    level: 'note',
    file,
    found,
    expected,
    done,
  });
  const faults: Fault[] = [];
  if (player.handicapIndex === undefined) {
    const done = `${handicapIndexOf(player)} is assumed`;
    faults.push(note('assumed-handicap', 'no handicap', 'handicapIndex', done));
  }
  if (bagOf(player) === STANDARD_BAG) faults.push(note('assumed-bag', 'no clubs', 'clubs', 'a usual bag is assumed'));
  return faults;
}

export function refuse(io: Io, code: string, file: string, found: string, expected: string): undefined {
  io.err(`${wordFault({ code, level: 'refused', file, found, expected })}\n`);
}

/** Every refusal, and so many of the lesser faults as a person reads. */
export function tellFaults(faults: readonly Fault[], io: Io, path: string): void {
  const lesser = faults.filter((f) => f.level !== 'refused');
  for (const fault of faults.filter((f) => f.level === 'refused')) io.err(`${wordFault(fault)}\n`);
  for (const fault of lesser.slice(0, MOST_NOTES)) io.err(`${wordFault(fault)}\n`);
  const more = lesser.length - MOST_NOTES;
  if (more > 0) io.err(`and ${more} more; leeway check ${path} lists them all\n`);
}

export function needed(given: Given, name: string): string {
  const text = given.text(name);
  if (text === undefined) throw new Usage(`--${name} is needed`);
  return text;
}
