import { type GivenFlag, type HoleGround, pacedFlag, type PlanePoint } from '@leeway/engine';
import { Usage } from './command.ts';
import { parseLonLat } from './quantities.ts';

const PACES = /^\s*(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*([LR])\s*$/i;

/** A place on the ground or on a green: `LON,LAT`, or `ON,SIDE` in paces of a yard, like `16,7R`. Throws `Usage`. */
export function parsePlace(option: string, text: string): GivenFlag {
  const [, on, inside, side] = PACES.exec(text) ?? [];
  if (on !== undefined && inside !== undefined && side !== undefined) {
    return { kind: 'paces', on: Number(on), in: Number(inside), side: side.toUpperCase() === 'L' ? 'L' : 'R' };
  }
  if (/[LR]\s*$/i.test(text)) {
    throw new Usage(`--${option}: found "${text}"; expected paces on and from the side, like 16,7R`);
  }
  return { kind: 'place', at: parseLonLat(option, text) };
}

/** The place in the plane of a hole; `undefined` when the green is not that deep. */
export function placeOnHole(ground: HoleGround, place: GivenFlag): PlanePoint | undefined {
  if (place.kind === 'place') return ground.frame.toPlane(place.at);
  const green = ground.areas.filter((a) => a.surface === 'green').map((a) => a.polygon);
  return pacedFlag(place, ground.line, green);
}
