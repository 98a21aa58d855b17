import type { Fault } from '@leeway/contract';
import {
  type Day,
  FIRMNESSES,
  FOOT_M,
  FORECAST_HEIGHT_M,
  type GroundToday,
  isPossible,
  OPEN_GROUND_M,
  POSSIBLE,
  type Quantity,
  REFERENCE,
  SEA_LEVEL_HPA,
  stationHpa,
} from '@leeway/engine';
import type { Given, OptionSpec } from './command.ts';
import { Usage } from './command.ts';
import {
  parseFreeNumber,
  parseHeightM,
  parseMetres,
  parseSpeedMps,
  parseTemperatureC,
  type Units,
} from './quantities.ts';

/** The options that describe the day, alike for every command. */
export const DAY_OPTIONS = {
  wind: {
    kind: 'text',
    value: 'SPEED@FROM',
    help: 'wind speed and the bearing it blows from: 12mph@270; calm unless said',
  },
  gusts: { kind: 'text', value: 'SPEED', help: 'speed of the strongest gusts' },
  'wind-height': {
    kind: 'text',
    value: 'M',
    help: 'height at which the wind was measured: 10 (a forecast) unless said',
  },
  roughness: { kind: 'text', value: 'M', help: 'roughness of the ground under the wind: .03 (open grass) unless said' },
  temperature: { kind: 'text', value: 'T', help: 'temperature of the air; 20 °C unless said' },
  altitude: { kind: 'text', value: 'H', help: 'height above the sea' },
  pressure: { kind: 'text', value: 'HPA', help: 'air pressure reduced to sea level, as in a weather report' },
  'station-pressure': { kind: 'text', value: 'HPA', help: 'air pressure as measured where the ball is' },
  humidity: { kind: 'text', value: 'PERCENT', help: 'relative humidity; 50 unless said' },
  firmness: { kind: 'text', value: 'soft|normal|firm', help: 'how hard the ground is' },
  'green-speed': { kind: 'text', value: 'FT', help: 'speed of the greens, feet of roll' },
  wet: { kind: 'flag', help: 'the ground is wet: it plays soft' },
  frozen: { kind: 'flag', help: 'the ground is frozen' },
  plugging: { kind: 'flag', help: 'a ball stays in the mark that it makes' },
} as const satisfies { readonly [name: string]: OptionSpec };

/** Keeps what is possible and tells what is not, by the name of its option. */
export class Door {
  readonly faults: Fault[] = [];

  /** The value as it is; a fault is noted when it cannot be. `shown` is what was written. */
  check(option: string, quantity: Quantity, value: number, shown: string, unit: string): number {
    if (!isPossible(quantity, value)) {
      const [least, most] = POSSIBLE[quantity];
      const expected = `${least} to ${most}${unit === '' ? '' : ` ${unit}`}`;
      this.faults.push({ code: 'impossible', level: 'refused', file: `--${option}`, found: shown, expected });
    }
    return value;
  }
}

/**
 * The day that the options describe; what is not said is the reference day's. Words that are no figures throw `Usage`; figures that cannot be
 * are told to the door.
 */
export function readDay(given: Given, units: Units, door: Door): Day {
  const figure = (
    option: string,
    quantity: Quantity,
    unit: string,
    parse: (option: string, text: string) => number,
  ): number | undefined => {
    const text = given.text(option);
    return text === undefined ? undefined : door.check(option, quantity, parse(option, text), text, unit);
  };
  const speed = (option: string, text: string): number => parseSpeedMps(option, text, units);
  const altitudeM = figure('altitude', 'altitudeM', 'm', (o, text) => parseHeightM(o, text, units)) ?? 0;
  const reduced = figure('pressure', 'seaLevelHpa', 'hPa', parseFreeNumber);
  const station = figure('station-pressure', 'stationHpa', 'hPa', parseFreeNumber);
  if (reduced !== undefined && station !== undefined) {
    throw new Usage('--pressure and --station-pressure are two ways to say one thing; expected one of them');
  }
  const gustMps = figure('gusts', 'gustMps', 'm/s', speed);
  const wind = readWind(given, units, door);
  if (gustMps !== undefined && gustMps < wind.speedMps)
    throw new Usage('--gusts: expected at least the speed of --wind');
  return {
    temperatureC:
      figure('temperature', 'temperatureC', '°C', (o, text) => parseTemperatureC(o, text, units)) ??
      REFERENCE.temperatureC,
    stationHpa: station ?? stationHpa(reduced ?? SEA_LEVEL_HPA, altitudeM),
    humidityPercent: figure('humidity', 'humidityPercent', '%', parseFreeNumber) ?? REFERENCE.humidityPercent,
    altitudeM,
    wind: {
      ...wind,
      heightM: figure('wind-height', 'windHeightM', 'm', parseMetres) ?? FORECAST_HEIGHT_M,
      roughnessM: figure('roughness', 'roughnessM', 'm', parseMetres) ?? OPEN_GROUND_M,
      ...(gustMps === undefined ? {} : { gustMps }),
    },
    ground: readGroundToday(given, door),
  };
}

function readWind(given: Given, units: Units, door: Door): { readonly speedMps: number; readonly fromDeg: number } {
  const text = given.text('wind');
  if (text === undefined) return { speedMps: 0, fromDeg: 0 };
  const [speed = '', from, ...more] = text.split('@');
  if (from === undefined || more.length > 0) {
    throw new Usage(`--wind: found "${text}"; expected SPEED@FROM, like 12mph@270 for a wind out of the west`);
  }
  return {
    speedMps: door.check('wind', 'windMps', parseSpeedMps('wind', speed, units), speed, 'm/s'),
    fromDeg: door.check('wind', 'windFromDeg', parseFreeNumber('wind', from), from, 'degrees'),
  };
}

function readGroundToday(given: Given, door: Door): GroundToday {
  const text = given.text('firmness');
  const firmness = FIRMNESSES.find((f) => f === text?.trim().toLowerCase());
  if (text !== undefined && firmness === undefined) {
    throw new Usage(`--firmness: found "${text}"; expected one of ${FIRMNESSES.join(', ')}`);
  }
  const feet = given.text('green-speed');
  const greenSpeedM =
    feet === undefined
      ? undefined
      : door.check('green-speed', 'greenSpeedM', parseFreeNumber('green-speed', feet) * FOOT_M, feet, 'm of roll');
  return {
    ...(firmness === undefined ? {} : { firmness }),
    ...(greenSpeedM === undefined ? {} : { greenSpeedM }),
    ...(given.flag('wet') ? { wet: true } : {}),
    ...(given.flag('frozen') ? { frozen: true } : {}),
    ...(given.flag('plugging') ? { plugging: true } : {}),
  };
}
