import { type GivenFlag, type HoleGround, pacedFlag, type PlanePoint } from '@leeway/engine';
import { parseFlag } from '@leeway/formats';
import { Usage } from './command.ts';

/** A place on the ground or on a green: `LON,LAT`, or `ON,SIDE` in paces of a yard, like `16,7R`. Throws `Usage`. */
export function parsePlace(option: string, text: string): GivenFlag {
  const { value, faults } = parseFlag(text);
  if (value === undefined)
    throw new Usage(`--${option}: found "${text}"; expected ${faults[0]?.expected ?? 'a place'}`);
  return value;
}

/** The place in the plane of a hole; `undefined` when the green is not that deep. */
export function placeOnHole(ground: HoleGround, place: GivenFlag): PlanePoint | undefined {
  if (place.kind === 'place') return ground.frame.toPlane(place.at);
  const green = ground.areas.filter((a) => a.surface === 'green').map((a) => a.polygon);
  return pacedFlag(place, ground.line, green);
}
