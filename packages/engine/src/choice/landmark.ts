import type { Area, HoleGround } from '../ground/hole.ts';
import type { Surface } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { centroid } from '../geometry/polygon.ts';
import { distanceM } from '../geometry/segment.ts';
import { bearingRad, offsetOf } from './view.ts';

/** A mapped feature, or several of a kind on the same side, as a player would name it. */
export interface Landmark {
  readonly surface: Surface | 'unmapped';
  /** With its article: "the front bunker", "the trees", "out of bounds", or its mapped name. */
  readonly words: string;
  /** Indices in `ground.areas`; -1 is bare rough, -2 unmapped ground. */
  readonly areas: readonly number[];
}

const NEAR_GREEN_M = 60;
/** The last leg of the hole line decides what is front and back of the green. */
const LAST_LEG_M = 50;
/** Water that is this much longer than it is wide is a creek. */
const CREEK_RATIO = 6;

const UNMAPPED: Landmark = { surface: 'unmapped', words: 'ground that is not mapped', areas: [-2] };

/** What each area of a hole is called, by its index in `ground.areas` (-1 and -2 included). Two of a kind are told apart by where they lie. */
export function landmarksOf(ground: HoleGround): ReadonlyMap<number, Landmark> {
  const nouns = ground.areas.map(nounOf);
  const named = new Map<string, number[]>();
  ground.areas.forEach((area, index) => {
    const noun = nouns[index] ?? '';
    const alone = nouns.filter((n) => n === noun).length === 1;
    const key = area.name ?? (alone || !ADJECTIVE.has(area.surface) ? noun : `${sideOf(ground, area)} ${noun}`);
    named.set(key, [...(named.get(key) ?? []), index]);
  });
  const drawnRough = ground.areas.flatMap((a, i) => (a.surface === 'rough' && a.name === undefined ? [i] : []));
  const rough: Landmark = { surface: 'rough', words: 'the rough', areas: [-1, ...drawnRough] };
  const marks = new Map<number, Landmark>([[-2, UNMAPPED], ...rough.areas.map((i) => [i, rough] as const)]);
  for (const [key, areas] of named) {
    const first = ground.areas[areas[0] ?? -1];
    if (first === undefined || marks.has(areas[0] ?? -1)) continue;
    const mark = { surface: first.surface, words: wordsOf(key, first, areas.length), areas };
    for (const index of areas) marks.set(index, mark);
  }
  return marks;
}

/** Kinds that are told apart by their side. */
const ADJECTIVE: ReadonlySet<Surface> = new Set<Surface>(['bunker', 'penalty', 'recovery']);

function wordsOf(key: string, area: Area, count: number): string {
  if (area.name !== undefined || area.surface === 'out') return key;
  const many = count > 1 && (area.surface === 'bunker' || area.surface === 'penalty');
  return `the ${key}${many ? 's' : ''}`;
}

function nounOf(area: Area): string {
  switch (area.surface) {
    case 'penalty':
      return isLong(area) ? 'creek' : 'pond';
    case 'recovery':
      return 'trees';
    case 'out':
      return 'out of bounds';
    default:
      return area.surface;
  }
}

/** For a long strip length is about half the perimeter and width about area over length. */
function isLong(area: Area): boolean {
  const { outer } = area.polygon;
  let perimeterM = 0;
  let twiceArea = 0;
  let a = outer.at(-1);
  for (const b of outer) {
    if (a !== undefined) {
      perimeterM += distanceM(a, b);
      twiceArea += a.eastM * b.northM - b.eastM * a.northM;
    }
    a = b;
  }
  const lengthM = perimeterM / 2;
  return lengthM ** 2 > CREEK_RATIO * (Math.abs(twiceArea) / 2);
}

/** Front, back, left or right of the green when near it; else left or right of the hole line. */
function sideOf(ground: HoleGround, area: Area): string {
  const centre = centroid(area.polygon.outer);
  const green = ground.areas.find((a) => a.surface === 'green');
  const middle = green === undefined ? ground.flag : centroid(green.polygon.outer);
  if (distanceM(centre, middle) < NEAR_GREEN_M) {
    const { alongM, acrossM } = offsetOf(centre, middle, lastLegRad(ground));
    if (Math.abs(acrossM) > Math.abs(alongM)) return acrossM < 0 ? 'left' : 'right';
    return alongM < 0 ? 'front' : 'back';
  }
  return rightOfLineM(ground.line, centre) < 0 ? 'left' : 'right';
}

function lastLegRad(ground: HoleGround): number {
  const before = [ground.ball, ...ground.line].findLast((p) => distanceM(p, ground.flag) > LAST_LEG_M);
  return bearingRad(before ?? ground.ball, ground.flag);
}

/** Signed distance to the right of the nearest leg of the hole line. */
function rightOfLineM(line: readonly PlanePoint[], p: PlanePoint): number {
  let nearest = { awayM: Number.POSITIVE_INFINITY, acrossM: 0 };
  let a = line[0];
  for (const b of line.slice(1)) {
    if (a === undefined) break;
    const { alongM, acrossM } = offsetOf(p, a, bearingRad(a, b));
    const pastM = Math.max(0, -alongM, alongM - distanceM(a, b));
    const awayM = Math.hypot(pastM, acrossM);
    if (awayM < nearest.awayM) nearest = { awayM, acrossM };
    a = b;
  }
  return nearest.acrossM;
}
