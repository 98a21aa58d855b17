import { LIES } from '@leeway/engine';
import * as z from 'zod';
import type { Read } from './fault.ts';
import { faultsOfIssues } from './issues.ts';
import { parseJson } from './json.ts';
import { dateSchema, daySchema, nameSchema } from './stored/words.ts';

/** Version of the round file. */
export const ROUND_VERSION = 1;

const metres = z.number().min(-1000).max(1000);
/**
 * A place of a stroke: on the Earth; from the flag, seen from where the stroke was played, in metres or in paces of a yard; or in metres on from the green's front
 * edge and in from its right edge.
 */
const place = z.union([
  z.strictObject({ lon: z.number().min(-180).max(180), lat: z.number().min(-90).max(90) }),
  z.strictObject({ beyondFlagM: metres, rightOfFlagM: metres }),
  z.strictObject({ beyondFlagPaces: metres, rightOfFlagPaces: metres }),
  z.strictObject({ onFromFrontM: metres, inFromRightM: metres }),
]);
export type RoundPlace = z.infer<typeof place>;

const shot = z.strictObject({
  hole: z.string().min(1).max(8).exactOptional(),
  shot: z.int().min(1).max(40).exactOptional(),
  from: place.exactOptional(),
  lie: z.enum([...LIES, 'green']).exactOptional(),
  club: nameSchema.exactOptional(),
  swing: nameSchema.exactOptional(),
  aim: place.exactOptional(),
  finish: z.union([place, z.literal('holed')]).exactOptional(),
  strike: z.string().trim().min(1).max(40).exactOptional(),
  penalty: z.union([z.int().min(0).max(4), z.boolean()]).exactOptional(),
});
export type RoundShot = z.infer<typeof shot>;

const hole = z.strictObject({
  hole: z.string().min(1).max(8),
  flag: z.strictObject({ lon: z.number(), lat: z.number() }).exactOptional(),
  shots: z.array(shot).min(1).max(40),
});
export type RoundHole = z.infer<typeof hole>;

const roundSchema = z.strictObject({
  version: z.literal(ROUND_VERSION),
  date: dateSchema.exactOptional(),
  /** The weather as it was; what is not said is the reference day's. */
  day: daySchema.exactOptional(),
  holes: z.array(hole).max(18).exactOptional(),
  /** Strokes that name their holes, in order. */
  shots: z
    .array(shot.required({ hole: true }))
    .max(400)
    .exactOptional(),
});

/** A round as played: its holes in the order they were played, each with its strokes in order. */
export interface RoundFile {
  readonly date?: string;
  readonly day?: z.infer<typeof daySchema>;
  readonly holes: readonly RoundHole[];
}

export const roundJsonSchema = (): object => ({ title: 'Round', ...z.toJSONSchema(roundSchema) });

/** Reads a round file; strokes that stand in one list are gathered by their holes. Refused: another shape, and a round without strokes. */
export function readRound(text: string, file: string): Read<RoundFile> {
  const json = parseJson(text, file);
  if (json.value === undefined) return { faults: json.faults };
  const parsed = roundSchema.safeParse(json.value);
  if (!parsed.success) return { faults: faultsOfIssues(parsed.error.issues, json.value, file) };
  const { date, day, holes = [], shots = [] } = parsed.data;
  const byHole = new Map<string, RoundShot[]>();
  for (const s of shots) byHole.set(s.hole, [...(byHole.get(s.hole) ?? []), s]);
  const all = [...holes, ...[...byHole].map(([name, of]) => ({ hole: name, shots: of }))];
  const twice = all.find(({ hole: name }, i) => all.findIndex((h) => h.hole === name) < i);
  const refused = (found: string, expected: string): Read<RoundFile> => ({
    faults: [{ code: 'round', level: 'refused', file, found, expected }],
  });
  if (twice !== undefined) return refused(`hole ${twice.hole} a second time`, 'each hole once');
  if (all.length === 0) return refused('no strokes', 'holes with their shots');
  const said = { ...(date === undefined ? {} : { date }), ...(day === undefined ? {} : { day }) };
  return { value: { ...said, holes: all }, faults: [] };
}
