import { type Choice, distanceToLineM, type PlanePoint, SURFACES, type Units } from '@leeway/engine';
import type { HoleAnswer } from '../asks.ts';
import { holeAnswer } from './answers.ts';
import type { OpenHole } from './openHole.ts';
import { type StrokeRaster, UNMAPPED, writeRaster } from './strokeRaster.ts';

/**
 * A hole worked out beforehand, by the same code from the same files, so that the page has something to show while it solves the hole itself: the
 * answer, and what its charts are drawn from.
 */
export interface Prepared {
  readonly answers: { readonly [U in Units]: HoleAnswer };
  readonly choices: readonly Choice[];
  readonly strokes: StrokeRaster;
}

/** Strokes are kept so far from the hole's line: a chart draws contours to 105 m, and smooths over some metres more. */
const BESIDE_M = 115;

/** What is written down of an open hole. */
export function prepare(open: OpenHole): Prepared {
  const { solution, shots } = open.plan;
  const { line } = solution.ground;
  const [corner, opposite] = cornersOf(line);
  const from = { at: solution.ground.ball, lie: 'tee' } as const;
  const answer = (units: Units): HoleAnswer => ({
    ...holeAnswer({ ...open, ask: { ...open.ask, units } }),
    prepared: true,
  });
  return {
    answers: { yd: answer('yd'), m: answer('m') },
    choices: shots.map(({ choice }) => choice),
    strokes: writeRaster(
      corner,
      opposite,
      (p) => solution.strokesAtRest(p, from),
      (p) =>
        solution.isUnmapped(p) || distanceToLineM(p, line) > BESIDE_M
          ? UNMAPPED
          : SURFACES.indexOf(solution.surfaceAt(p)),
    ),
  };
}

/** Of a box round all places so near a line. */
function cornersOf(line: readonly PlanePoint[]): [PlanePoint, PlanePoint] {
  const [easts, norths] = [line.map((p) => p.eastM), line.map((p) => p.northM)];
  return [
    { eastM: Math.min(...easts) - BESIDE_M, northM: Math.min(...norths) - BESIDE_M },
    { eastM: Math.max(...easts) + BESIDE_M, northM: Math.max(...norths) + BESIDE_M },
  ];
}

/** As text. The maps in the choices become lists of their entries, marked. */
export const writePrepared = (prepared: Prepared): string =>
  JSON.stringify(prepared, (_, value: unknown) => (value instanceof Map ? { [ENTRIES]: [...value] } : value));

/** The inverse, of what the text parses to. */
export function readPrepared(parsed: unknown): Prepared {
  const { choices, ...rest } = parsed as Prepared;
  return { ...rest, choices: withMaps(choices) as readonly Choice[] };
}

const ENTRIES = 'entries of a map';

function withMaps(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withMaps);
  if (typeof value !== 'object' || value === null) return value;
  if (ENTRIES in value) return new Map(value[ENTRIES] as readonly (readonly [unknown, unknown])[]);
  return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, withMaps(of)]));
}
