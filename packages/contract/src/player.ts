import { FLIGHT_TAGS, LIES, type PlayerFile } from '@leeway/engine';
import { z } from 'zod';
import type { Fault, Read } from './fault.ts';
import { parseJson } from './json.ts';
import { faultsOfIssues, type Place } from './issues.ts';

/** Numbers are finite: the schema refuses NaN and infinities everywhere. */
const between = (least: number, most: number): z.ZodNumber => z.number().min(least).max(most);
const name = z.string().trim().min(1).max(80);

const component = z.strictObject({
  weight: between(0, 1),
  alongM: between(-100, 500),
  acrossM: between(-300, 300),
  sdAlongM: between(0, 200),
  sdAcrossM: between(0, 200),
  corr: between(-0.999, 0.999),
});
const components = z.array(component).min(1).max(12);

const fit = z.strictObject({
  model: z.literal('two-part'),
  n: z.int().min(0).max(1_000_000),
  carryM: between(0.5, 500),
  seCarryM: between(0, 200),
  directionDeg: between(-60, 60),
  seDirectionDeg: between(0, 60),
  sdCarryM: between(0, 200),
  seLogSdCarry: between(0, 5),
  directionSdDeg: between(0, 60),
  seLogDirectionSd: between(0, 5),
  corr: between(-0.999, 0.999),
  mishitShare: between(0, 0.95),
  seMishitShare: between(0, 1),
  draws: z.array(components).max(400).exactOptional(),
});

const lieEffect = z.strictObject({ distance: between(0.05, 1.5), spread: between(0.1, 10) });
const claimedCarryM = between(0.5, 450);

const puttingTable = z
  .array(z.strictObject({ distanceM: between(0, 300), strokes: between(0, 20) }))
  .min(1)
  .max(5000);
const puttingParameters = z.strictObject({
  sdAngleDeg: between(0.02, 15),
  sdDistance: between(0.002, 0.6),
  pastM: between(0, 3),
  captureM: between(0.02, 5),
  holeHalfWidthM: between(0.005, 0.2).exactOptional(),
});

/** A club of the bag, with the swings that the player owns with it. */
const clubSchema = z.strictObject({
  name,
  loftDeg: between(0, 80).exactOptional(),
  flight: z.enum(FLIGHT_TAGS).exactOptional(),
  claimedCarryM: claimedCarryM.exactOptional(),
  swings: z
    .array(z.union([name, z.strictObject({ name, claimedCarryM: claimedCarryM.exactOptional() })]))
    .max(12)
    .exactOptional(),
});

/** A pattern, stated or fitted. */
export const patternSchema = z.strictObject({
  club: name,
  swing: name,
  lie: z.enum(LIES).exactOptional(),
  components,
  rest: z.boolean().exactOptional(),
  fit: fit.exactOptional(),
});

/** The shape of a Player file. What the parts mean stands at the type `PlayerFile`. */
export const playerSchema = z.strictObject({
  version: z.literal(1),
  name,
  hand: z.enum(['right', 'left']).exactOptional(),
  sex: z.enum(['man', 'woman']).exactOptional(),
  handicapIndex: between(-10, 54).exactOptional(),
  units: z.enum(['yd', 'm']).exactOptional(),
  clubs: z.array(clubSchema).max(40).exactOptional(),
  patterns: z.array(patternSchema).max(600).exactOptional(),
  lies: z
    .strictObject({
      rough: lieEffect.exactOptional(),
      bunker: lieEffect.exactOptional(),
      recovery: lieEffect.exactOptional(),
    })
    .exactOptional(),
  onCourse: z.strictObject({ distanceSdPct: between(0, 40), mishitShare: between(0, 0.6) }).exactOptional(),
  putting: z.union([puttingTable, puttingParameters]).exactOptional(),
  shortGame: z
    .strictObject({
      spread: between(0.05, 10),
      mishitShare: between(0, 0.7),
      directionSdDeg: between(0.05, 30).exactOptional(),
    })
    .exactOptional(),
});

/** JSON Schema (2020-12) of a Player file, made from the code that reads it. */
export const playerJsonSchema = (): object => ({ title: 'Player', ...z.toJSONSchema(playerSchema) });

/** Weights may miss 1 by the rounding of a few digits; the model brings them to 1. */
const WEIGHT_TOLERANCE = 0.002;

/**
 * Reads a Player file. Refused, each with its JSON path: text that is not JSON, unknown keys, wrong types, figures out of range, weights that do
 * not sum to 1, a pattern or a club given twice, a fitted pattern with a lie, a putting table that does not rise.
 */
export function readPlayer(text: string, file: string): Read<PlayerFile> {
  const json = parseJson(text, file);
  if (json.value === undefined) return { faults: json.faults };
  const parsed = playerSchema.safeParse(json.value);
  if (!parsed.success) return { faults: faultsOfIssues(parsed.error.issues, json.value, file) };
  const player: PlayerFile = parsed.data;
  const faults = [...patternFaults(player, file), ...clubFaults(player, file), ...puttingFaults(player, file)];
  return faults.some((f) => f.level === 'refused') ? { faults } : { value: player, faults };
}

const refused = (code: string, file: string, at: Place, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file,
  at,
  found,
  expected,
});

function patternFaults(player: PlayerFile, file: string): readonly Fault[] {
  const faults: Fault[] = [];
  const seen = new Set<string>();
  const patterns = player.patterns ?? [];
  patterns.forEach((p, i) => {
    const at = `patterns[${i}]`;
    const sum = p.components.reduce((total, c) => total + c.weight, 0);
    if (Math.abs(sum - 1) > WEIGHT_TOLERANCE)
      faults.push(
        refused('weights', file, `${at}.components`, `weights that sum to ${round(sum)}`, 'weights that sum to 1'),
      );
    if (p.fit !== undefined && p.lie !== undefined)
      faults.push(
        refused(
          'fit-with-lie',
          file,
          `${at}.lie`,
          `a fitted pattern for lie ${p.lie}`,
          'a fitted pattern without a lie',
        ),
      );
    const key = JSON.stringify([p.club, p.swing, p.lie]);
    const words = `${p.club} ${p.swing}${p.lie === undefined ? '' : ` from ${p.lie}`}`;
    if (seen.has(key))
      faults.push(refused('twice', file, at, `${words} a second time`, 'one pattern for a club, swing and lie'));
    seen.add(key);
  });
  const fitted = patterns.filter((p) => p.fit !== undefined).length;
  if (fitted > 0 && fitted < patterns.length)
    faults.push({
      code: 'stated-and-fitted',
      level: 'note',
      file,
      at: 'patterns',
      found: `${patterns.length - fitted} stated and ${fitted} fitted patterns`,
      expected: 'one kind',
      done: 'all are taken as stated: nothing is added to them',
    });
  return faults;
}

function clubFaults(player: PlayerFile, file: string): readonly Fault[] {
  const seen = new Set<string>();
  return (player.clubs ?? []).flatMap((club, i) => {
    if (!seen.has(club.name)) {
      seen.add(club.name);
      return [];
    }
    return [refused('twice', file, `clubs[${i}]`, `${club.name} a second time`, 'a club once')];
  });
}

function puttingFaults(player: PlayerFile, file: string): readonly Fault[] {
  const table = player.putting;
  if (!Array.isArray(table)) return [];
  const rows: readonly { readonly distanceM: number }[] = table;
  const at = rows.findIndex((row, i) => i > 0 && row.distanceM <= (rows[i - 1]?.distanceM ?? -1));
  if (at < 0) return [];
  return [
    refused(
      'not-rising',
      file,
      `putting[${at}].distanceM`,
      `${rows[at]?.distanceM ?? ''}`,
      'distances that rise from row to row',
    ),
  ];
}

const round = (x: number): number => Math.round(x * 1e4) / 1e4;
