import { type Charted, scene } from '@leeway/chart';
import type { GroundFile } from '@leeway/contract';
import { type Day, FORECAST_HEIGHT_M, type HoleGround, planHole, type PlayerModel, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import type { Command, Given, Io } from './command.ts';
import { Usage } from './command.ts';
import { DATA_OPTION } from './data.ts';
import { DAY_OPTIONS, Door, readDay } from './day.ts';
import { drawn as written, formOf, LIGHT_OPTION, lightOf } from './drawn.ts';
import { writeBeside } from './files.ts';
import { inputTexts } from './inputTexts.ts';
import { needed, readPlanInput, refuse, tellFaults } from './planInput.ts';
import { parsePlace } from './planPlace.ts';
import { parseWhole, UNITS_OPTION, unitsOf } from './quantities.ts';

const SIZE = { widthPx: 690, heightPx: 768 };
const MOST_SHOTS = 12;

/** `leeway chart`: a hole, or one shot of its plan, drawn. */
export const chart: Command = {
  name: 'chart',
  summary: 'draw a hole as a chart, with stroke contours, pattern, spot and room when a player is given',
  usage: [
    'leeway chart --ground FILE --hole N [--player FILE] [--shot K] [--flag PLACE] [the day] [--units yd|m] [--light paper|sun|print] --out FILE.svg|FILE.pdf [--force]',
  ],
  examples: [
    'leeway chart --ground course.geojson --hole 7 --player kim.json --out hole-7.svg',
    'leeway chart --ground course.osm --hole 7 --player kim.json --shot 2 --wind 12mph@240 --out approach.pdf --force',
  ],
  options: {
    ground: { kind: 'text', value: 'FILE', help: 'mapped ground: GeoJSON, OSM XML, or the JSON of an OSM query' },
    data: DATA_OPTION,
    hole: { kind: 'text', value: 'N', help: 'the hole to draw' },
    player: { kind: 'text', value: 'FILE', help: 'the player file; without it the ground alone is drawn' },
    shot: { kind: 'text', value: 'K', help: 'the sheet of the plan’s shot K; the whole hole unless said' },
    flag: { kind: 'text', value: 'PLACE', help: 'LON,LAT, or paces on from the front and in from a side: 16,7R' },
    out: { kind: 'text', value: 'FILE', help: 'the file to write, SVG or PDF by its ending; the fonts are inside it' },
    light: LIGHT_OPTION,
    force: { kind: 'flag', help: 'replace an existing file' },
    units: UNITS_OPTION,
    ...DAY_OPTIONS,
  },
  run: runChart,
};

interface ChartInput {
  readonly ground: HoleGround;
  readonly file: GroundFile;
  readonly path: string;
  readonly player: PlayerModel | undefined;
  readonly day: Day;
}

async function runChart(given: Given, io: Io): Promise<number> {
  const units = unitsOf(given);
  needed(given, 'hole');
  const out = needed(given, 'out');
  const form = formOf(out);
  const light = lightOf(given, form);
  const shotText = given.text('shot');
  const shot = shotText === undefined ? undefined : parseWhole('shot', shotText, [1, MOST_SHOTS]);
  if (shot !== undefined && given.text('player') === undefined) throw new Usage('--shot needs --player FILE');
  const input = given.text('player') === undefined ? await groundAlone(given, io) : await withPlayer(given, io);
  if (input === undefined) return 1;
  const { course, attribution } = input.file;
  const planned = plannedOn(input);
  if (shot !== undefined && shot > planned.choices.length) {
    const found = `shot ${shot} of a plan of ${planned.choices.length}`;
    refuse(io, 'no-such-shot', input.path, found, 'a shot of the plan');
    return 1;
  }
  const drawn = scene(
    {
      ...planned,
      ...windOf(input.day),
      ground: input.ground,
      ...(course === undefined ? {} : { course }),
      ...(attribution === undefined ? {} : { attribution }),
      ...(shot === undefined ? {} : { shot: shot - 1 }),
    },
    SIZE,
    units,
  );
  const faults = await writeBeside(out, await written(drawn, form, light), { force: given.flag('force') });
  tellFaults(faults, io, out);
  if (faults.length > 0) return 1;
  const told = { file: out, title: drawn.title, description: drawn.description };
  io.out(given.flag('json') ? `${JSON.stringify(told)}\n` : `${drawn.title}\n${drawn.description}\n`);
  return 0;
}

function plannedOn({ ground, player, day }: ChartInput): Pick<Charted, 'choices' | 'strokesAtRest'> {
  if (player === undefined) return { choices: [] };
  const solution = solveHole(ground, player, day);
  const { shots } = planHole(solution, player);
  return { choices: shots.map((s) => s.choice), strokesAtRest: (p, from) => solution.strokesAtRest(p, from) };
}

/** The rose tells the wind when there is one. */
function windOf({ wind: { speedMps, fromDeg, heightM } }: Day): Pick<Charted, 'wind'> {
  if (speedMps === 0) return {};
  return { wind: { speedMps, fromDeg, known: heightM === FORECAST_HEIGHT_M ? 'forecast' : 'measured' } };
}

async function withPlayer(given: Given, io: Io): Promise<ChartInput | undefined> {
  const input = await readPlanInput(given, io);
  const [ground] = input?.holes ?? [];
  if (input === undefined || ground === undefined) return undefined;
  return { ground, file: input.ground, path: input.groundPath, player: input.player, day: input.day };
}

async function groundAlone(given: Given, io: Io): Promise<ChartInput | undefined> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const path = needed(given, 'ground');
  const hole = needed(given, 'hole');
  const flag = given.text('flag');
  const door = new Door();
  const day = readDay(given, unitsOf(given), door);
  const text = (await inputTexts(given, io))?.ground;
  if (text === undefined) return undefined;
  const place = flag === undefined ? {} : { flag: parsePlace('flag', flag) };
  const read = text.value === undefined ? undefined : readGround(text.value, path, { hole, ...place });
  const faults = [...door.faults, ...text.faults, ...(read?.faults ?? [])];
  tellFaults(faults, io, path);
  if (read?.value === undefined || faults.some((f) => f.level === 'refused')) return undefined;
  const ground = read.value.holes.find((h) => h.hole === hole);
  if (ground !== undefined) return { ground, file: read.value, path, player: undefined, day };
  const numbers = read.value.holes.map((h) => h.hole).join(', ');
  return refuse(io, 'no-such-hole', path, `hole ${hole}`, numbers === '' ? 'a hole' : `one of ${numbers}`);
}
