import { type FlyDocument, flyDocument } from '@leeway/contract';
import { airOf, fly as flown, type Launch, runOut, type Surface, SURFACES, touchdownOf } from '@leeway/engine';
import type { Command, Given, Io } from './command.ts';
import { Usage } from './command.ts';
import { DAY_OPTIONS, Door, readDay } from './day.ts';
import { flyText } from './flyText.ts';
import { needed, refuse, tellFaults } from './planInput.ts';
import { parseFreeNumber, parseHeightM, parseSpeedMps, type Units, UNITS_OPTION, unitsOf } from './quantities.ts';

/** `leeway fly`: one ball through the day's air. */
export const fly: Command = {
  name: 'fly',
  summary: 'fly one ball through the day’s air: carry, side, apex, time, descent and run',
  usage: [
    'leeway fly --speed V --launch DEG --spin RPM [--axis DEG] [--azimuth DEG] [--bearing DEG] [--target-height H] [--surface S] [the day] [--json]',
  ],
  examples: [
    'leeway fly --speed 115mph --launch 17.3 --spin 5750 --wind 10mph@0',
    'leeway fly --units m --speed 70 --launch 12 --spin 2600 --axis 5 --temperature 8 --altitude 300 --json',
  ],
  options: {
    speed: { kind: 'text', value: 'V', help: 'ball speed' },
    launch: { kind: 'text', value: 'DEG', help: 'angle above the horizon at which the ball leaves' },
    spin: { kind: 'text', value: 'RPM', help: 'backspin, turns a minute' },
    axis: { kind: 'text', value: 'DEG', help: 'tilt of the spin axis; positive bends to the right; 0 unless said' },
    azimuth: { kind: 'text', value: 'DEG', help: 'start direction to the right of the target line; 0 unless said' },
    bearing: { kind: 'text', value: 'DEG', help: 'bearing of the target line; north (0) unless said' },
    'target-height': { kind: 'text', value: 'H', help: 'height of the landing ground above the ball; 0 unless said' },
    surface: { kind: 'text', value: 'S', help: `what it lands on: ${SURFACES.join(', ')}; fairway unless said` },
    units: UNITS_OPTION,
    ...DAY_OPTIONS,
  },
  run: runFly,
};

/** One ball has time for the finest steps. */
const FINE_STEP_S = 0.01;

async function runFly(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const units = unitsOf(given);
  const door = new Door();
  const launch = readLaunch(given, units, door);
  const bearingDeg = degrees(given, 'bearing', 'bearingDeg', door) ?? 0;
  const heightText = given.text('target-height') ?? '0';
  const targetHeightM = door.check(
    'target-height',
    'targetHeightM',
    parseHeightM('target-height', heightText, units),
    heightText,
    'm',
  );
  const stated = readSurface(given);
  const day = readDay(given, units, door);
  tellFaults(door.faults, io, 'fly');
  if (door.faults.length > 0) return 1;

  const flight = flown(launch, airOf(day, bearingDeg), targetHeightM, FINE_STEP_S);
  if (!flight.landed) {
    const found = `a ball that rises ${flight.apexM.toFixed(1)} m`;
    refuse(
      io,
      'never-there',
      '--target-height',
      found,
      `one that comes down on ground ${targetHeightM.toFixed(1)} m up`,
    );
    return 1;
  }
  const surface = stated ?? 'fairway';
  const run = runOut(touchdownOf(flight), () => ({ surface }), day.ground);
  const document = flyDocument({
    day,
    launch,
    bearingDeg,
    targetHeightM,
    flight,
    run,
    surface,
    assumed: [
      ...(stated === undefined ? (['surface'] as const) : []),
      ...(run.firmnessAssumed ? (['firmness'] as const) : []),
      ...(surface === 'green' && day.ground.greenSpeedM === undefined ? (['green speed'] as const) : []),
    ] satisfies FlyDocument['assumed'],
  });
  io.out(given.flag('json') ? `${JSON.stringify(document)}\n` : flyText(document, units));
  return 0;
}

function readLaunch(given: Given, units: Units, door: Door): Launch {
  const speed = needed(given, 'speed');
  return {
    speedMps: door.check('speed', 'speedMps', parseSpeedMps('speed', speed, units), speed, 'm/s'),
    launchDeg: neededNumber(given, 'launch', 'launchDeg', 'degrees', door),
    spinRpm: neededNumber(given, 'spin', 'spinRpm', 'turns a minute', door),
    axisDeg: degrees(given, 'axis', 'axisDeg', door) ?? 0,
    azimuthDeg: degrees(given, 'azimuth', 'azimuthDeg', door) ?? 0,
  };
}

function neededNumber(
  given: Given,
  option: string,
  quantity: 'launchDeg' | 'spinRpm',
  unit: string,
  door: Door,
): number {
  const text = needed(given, option);
  return door.check(option, quantity, parseFreeNumber(option, text), text, unit);
}

function degrees(
  given: Given,
  option: string,
  quantity: 'axisDeg' | 'azimuthDeg' | 'bearingDeg',
  door: Door,
): number | undefined {
  const text = given.text(option);
  return text === undefined ? undefined : door.check(option, quantity, parseFreeNumber(option, text), text, 'degrees');
}

function readSurface(given: Given): Surface | undefined {
  const text = given.text('surface');
  if (text === undefined) return undefined;
  const surface = SURFACES.find((s) => s === text.trim().toLowerCase());
  if (surface === undefined) throw new Usage(`--surface: found "${text}"; expected one of ${SURFACES.join(', ')}`);
  return surface;
}
