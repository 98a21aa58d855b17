import type { Given, OptionSpec } from './command.ts';
import { Usage } from './command.ts';

/** The options that describe the day, alike for every command that plans. */
export const DAY_OPTIONS = {
  wind: { kind: 'text', value: 'SPEED@FROM', help: 'not yet: wind speed and the bearing it blows from' },
  'wind-height': { kind: 'text', value: 'M', help: 'not yet: height at which the wind was measured' },
  roughness: { kind: 'text', value: 'M', help: 'not yet: roughness of the ground under the wind' },
  temperature: { kind: 'text', value: 'T', help: 'not yet: temperature of the air' },
  altitude: { kind: 'text', value: 'H', help: 'not yet: height above the sea' },
  pressure: { kind: 'text', value: 'HPA', help: 'not yet: air pressure reduced to sea level' },
  'station-pressure': { kind: 'text', value: 'HPA', help: 'not yet: air pressure as measured' },
  humidity: { kind: 'text', value: 'PERCENT', help: 'not yet: relative humidity' },
  firmness: { kind: 'text', value: 'soft|normal|firm', help: 'not yet: how hard the ground is' },
  'green-speed': { kind: 'text', value: 'FT', help: 'not yet: speed of the greens' },
} as const satisfies { readonly [name: string]: OptionSpec };

/** Every plan is for the reference day so far: any option of the day is refused, rather than left out of the sum. Throws `Usage`. */
export function refuseDay(given: Given): void {
  const named = Object.keys(DAY_OPTIONS).filter((name) => given.flag(name));
  if (named.length === 0) return;
  const list = named.map((name) => `--${name}`).join(', ');
  throw new Usage(
    `${list}: the day cannot be changed yet; plans are for calm air, level ground, 20 °C and normal firmness. Leave ${named.length > 1 ? 'them' : 'it'} out`,
  );
}
