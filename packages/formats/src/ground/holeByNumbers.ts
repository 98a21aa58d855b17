import type { Fault, HazardNumbers, HoleNumbers } from '@leeway/contract';
import { frameAt, type GeoPoint, type PlanePoint, RAD_PER_DEG, YARD_M } from '@leeway/engine';

/** Typed holes lie in the ocean, each far from the others: they have no place of their own. */
const ORIGIN: GeoPoint = { lon: -30, lat: 45 };
const APART_DEG = 0.06;

/** Usual sizes of what the numbers leave open. */
const USUAL = {
  fairwayM: 32 * YARD_M,
  fairwayFromM: 110 * YARD_M,
  /** A hole up to this long has no fairway but round the green. */
  shortM: 230 * YARD_M,
  apronM: 6 * YARD_M,
  teeM: 4,
  roughM: 65 * YARD_M,
  beyondM: 35 * YARD_M,
  /** Outwards, of what is wider than it is told to be. */
  outwardsM: 55 * YARD_M,
  sandM: [6 * YARD_M, 22 * YARD_M],
} as const;

const STEP_M = 6;

/** A line of play: places at a distance along it and to its right. */
class LineOfPlay {
  private readonly atM: number;
  private readonly startRad: number;
  private readonly turnRad: number;

  constructor({ bearingDeg = 0, turn, lengthM }: HoleNumbers) {
    this.atM = turn?.atM ?? lengthM;
    this.startRad = bearingDeg * RAD_PER_DEG;
    this.turnRad = (turn?.byDeg ?? 0) * RAD_PER_DEG;
  }

  place(alongM: number, rightM: number): PlanePoint {
    const first = Math.min(alongM, this.atM);
    const then = alongM - first;
    const second = this.startRad + this.turnRad;
    // square to the leg; on the corner itself between both
    const leg = alongM < this.atM ? this.startRad : alongM > this.atM ? second : (this.startRad + second) / 2;
    return {
      eastM: first * Math.sin(this.startRad) + then * Math.sin(second) + rightM * Math.cos(leg),
      northM: first * Math.cos(this.startRad) + then * Math.cos(second) - rightM * Math.sin(leg),
    };
  }

  /** The turning point, when there is one before a place along the line. */
  corner(beforeM: number): readonly number[] {
    return this.turnRad !== 0 && this.atM < beforeM ? [this.atM] : [];
  }

  /** A band along the line between two offsets to the right. */
  band(fromM: number, toM: number, leftM: number, rightM: number): readonly PlanePoint[] {
    const steps = Math.max(1, Math.ceil((toM - fromM) / STEP_M));
    const regular = Array.from({ length: steps + 1 }, (_, i) => fromM + ((toM - fromM) * i) / steps);
    const alongs = [...regular, ...this.corner(toM).filter((m) => m > fromM)].toSorted((a, b) => a - b);
    return [...alongs.map((m) => this.place(m, rightM)), ...alongs.toReversed().map((m) => this.place(m, leftM))];
  }

  /** An oval round a place, with half axes along and across, turned clockwise. */
  oval(alongM: number, rightM: number, halfAlongM: number, halfAcrossM: number, turnedRad = 0): readonly PlanePoint[] {
    return Array.from({ length: 32 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 32;
      const [along, across] = [halfAlongM * Math.cos(angle), halfAcrossM * Math.sin(angle)];
      const [c, s] = [Math.cos(turnedRad), Math.sin(turnedRad)];
      return this.place(alongM + along * c - across * s, rightM + along * s + across * c);
    });
  }
}

type Tags = { readonly [key: string]: string };

/** A course of holes by numbers as GeoJSON with golf tags, each feature marked as typed; the numbers stand in it as they were given. */
export function courseByNumbers(holes: readonly HoleNumbers[]): string {
  const features = holes.flatMap((hole, i) => featuresOf(hole, { ...ORIGIN, lon: ORIGIN.lon + APART_DEG * i }));
  return `${JSON.stringify({ type: 'FeatureCollection', numbers: holes, features }, null, 1)}\n`;
}

/** The numbers in a course that was made by `courseByNumbers`; `undefined` of any other ground, whose lines are its own. */
export function numbersIn(text: string): readonly unknown[] | undefined {
  try {
    const { numbers } = JSON.parse(text) as { readonly numbers?: unknown };
    return Array.isArray(numbers) ? (numbers as unknown[]) : undefined;
  } catch {
    return undefined;
  }
}

function featuresOf(numbers: HoleNumbers, origin: GeoPoint): object[] {
  const { hole, name, par, lengthM, green, hazards } = numbers;
  const line = new LineOfPlay(numbers);
  const { toGeo } = frameAt(origin);
  const position = (p: PlanePoint): readonly number[] => {
    const { lon, lat } = toGeo(p);
    return [Number(lon.toFixed(8)), Number(lat.toFixed(8))];
  };
  const feature = (id: string, properties: Tags, geometry: object): object => ({
    type: 'Feature',
    id: `typed/${hole}/${id}`,
    properties: { ...properties, source: 'typed' },
    geometry,
  });
  const area = (id: string, tags: Tags, ring: readonly PlanePoint[]): object => {
    const corners = ring.map(position);
    return feature(id, tags, { type: 'Polygon', coordinates: [[...corners, ...corners.slice(0, 1)]] });
  };
  const golf = (id: string, kind: string, ring: readonly PlanePoint[]): object => area(id, { golf: kind }, ring);
  const turned = (green.turnedDeg ?? 0) * RAD_PER_DEG;
  const oval = (by: number) => line.oval(lengthM, 0, green.depthM / 2 + by, green.widthM / 2 + by, turned);
  const half = (numbers.fairwayWidthM ?? USUAL.fairwayM) / 2;
  const play = [0, ...line.corner(lengthM), lengthM].map((m) => position(line.place(m, 0)));
  return [
    feature(
      'line',
      {
        golf: 'hole',
        ref: hole,
        ...(par === undefined ? {} : { par: String(par) }),
        ...(name === undefined ? {} : { name }),
      },
      { type: 'LineString', coordinates: play },
    ),
    golf('rough', 'rough', line.band(-USUAL.teeM * 2, lengthM + USUAL.beyondM, -USUAL.roughM, USUAL.roughM)),
    ...(lengthM <= USUAL.shortM
      ? []
      : [golf('fairway', 'fairway', line.band(Math.min(USUAL.fairwayFromM, lengthM / 2), lengthM, -half, half))]),
    golf('apron', 'fairway', oval(USUAL.apronM)),
    golf('tee', 'tee', line.band(-USUAL.teeM, USUAL.teeM, -USUAL.teeM, USUAL.teeM)),
    golf('green', 'green', oval(0)),
    ...hazards.map((hazard, i) => area(`hazard/${i + 1}`, tagsOf(hazard), ringOf(hazard, line))),
  ];
}

const TAGS: { readonly [K in HazardNumbers['kind']]: Tags } = {
  sand: { golf: 'bunker' },
  water: { golf: 'lateral_water_hazard' },
  trees: { natural: 'wood' },
  out: { golf: 'out_of_bounds' },
};

/** Water across the line has to be carried: it gives no relief to the side. */
const tagsOf = ({ kind, side, name }: HazardNumbers): Tags => ({
  ...(kind === 'water' && side === 'across' ? { golf: 'water_hazard' } : TAGS[kind]),
  ...(name === undefined ? {} : { name }),
});

function ringOf({ kind, reachM, carryM, side, offM = 0 }: HazardNumbers, line: LineOfPlay): readonly PlanePoint[] {
  if (side === 'across') return line.band(reachM, carryM, -USUAL.roughM, USUAL.roughM);
  const sign = side === 'left' ? -1 : 1;
  const deepM = carryM - reachM;
  if (kind === 'sand') {
    const wideM = Math.min(Math.max(deepM, USUAL.sandM[0]), USUAL.sandM[1]);
    return line.oval((reachM + carryM) / 2, sign * (offM + wideM / 2), deepM / 2, wideM / 2);
  }
  const [near, far] = [sign * offM, sign * (offM + USUAL.outwardsM)];
  return line.band(reachM, carryM, Math.min(near, far), Math.max(near, far));
}

/** What cannot be played of typed holes, each with its place. */
export function numbersFaults(holes: readonly HoleNumbers[]): readonly Fault[] {
  const refused = (at: string, found: string, expected: string): Fault => ({
    code: 'numbers',
    level: 'refused',
    file: 'numbers',
    at,
    found,
    expected,
  });
  const seen = new Set<string>();
  return holes.flatMap(({ hole, lengthM, turn, green, hazards }) => {
    const faults: Fault[] = [];
    const at = `hole ${hole}`;
    if (seen.has(hole)) faults.push(refused(at, 'a second hole of this number', 'each number once'));
    seen.add(hole);
    const frontM = lengthM - green.depthM / 2;
    if (turn !== undefined && turn.atM >= frontM)
      faults.push(refused(`${at}: turn`, 'a turn at or beyond the green', 'one short of the green'));
    for (const [i, { reachM, carryM }] of hazards.entries()) {
      const place = `${at}: hazard ${i + 1}`;
      if (carryM <= reachM) faults.push(refused(place, 'a carry no longer than the reach', 'a carry beyond the reach'));
      else if (reachM > lengthM + USUAL.beyondM)
        faults.push(refused(place, 'a hazard far beyond the green', 'one that comes into play'));
    }
    return faults;
  });
}
