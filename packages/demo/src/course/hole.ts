import { frameAt, RAD_PER_DEG } from '@leeway/engine';
import type { DrawnFeature, DrawnHole, DrawnPoint } from './drawn.ts';

/** The course is drawn on one sheet: the tee of the 7th is its (0, 0), and up the sheet is this bearing. It lies in the open Atlantic. */
const COURSE_SHEET = { tee: { lon: -27.6, lat: 48.9 }, bearingDeg: 24 } as const;

/** Outlines and lines as data: `right,up right,up …` in metres on the hole's own sheet, drawn by hand corner by corner. */
export interface HoleData {
  /** First part of its features' ids. */
  readonly id: string;
  readonly ref: number;
  readonly name: string;
  readonly par: number;
  readonly strokeIndex: number;
  /** Where the tee stands on the course sheet, and by how many degrees clockwise the hole's sheet is turned on it. */
  readonly tee: DrawnPoint;
  readonly turnDeg: number;
  readonly line: string;
  readonly pin: string;
  readonly tees: readonly string[];
  readonly fairways: readonly string[];
  readonly green: string;
  readonly bunkers: readonly string[];
  readonly woods?: readonly string[];
  readonly scrub?: readonly string[];
  /** Single trees, a point each. */
  readonly trees?: string;
  readonly ponds?: readonly string[];
}

const OUTLINES = [
  ['woods', 'wood', { natural: 'wood' }],
  ['scrub', 'whins', { natural: 'scrub' }],
  ['fairways', 'fairway', { golf: 'fairway' }],
  ['tees', 'tee', { golf: 'tee' }],
  ['bunkers', 'bunker', { golf: 'bunker' }],
  ['ponds', 'pond', { golf: 'lateral_water_hazard', natural: 'water' }],
] as const;

/** A hole of the course from its data. */
export function drawnHole(data: HoleData): DrawnHole {
  const { id, ref, name, par, strokeIndex } = data;
  const outline = (path: string, points: string, tags: DrawnFeature['tags']): DrawnFeature => ({
    id: `${id}/${path}`,
    shape: 'outline',
    points: pointsOf(points),
    tags,
  });
  const outlines = OUTLINES.flatMap(([kind, path, tags]) =>
    (data[kind] ?? []).map((points, i) => outline(`${path}/${i + 1}`, points, tags)),
  );
  const trees = pointsOf(data.trees ?? '').map((point, i): DrawnFeature => ({
    id: `${id}/tree/${i + 1}`,
    shape: 'point',
    points: [point],
    tags: { natural: 'tree' },
  }));
  return {
    ...placed(data.tee, data.turnDeg),
    features: [
      {
        id: `${id}/line`,
        shape: 'line',
        straight: true,
        points: pointsOf(data.line),
        tags: { golf: 'hole', ref: `${ref}`, par: `${par}`, handicap: `${strokeIndex}`, name },
      },
      { id: `${id}/pin`, shape: 'point', points: pointsOf(data.pin), tags: { golf: 'pin', ref: `${ref}` } },
      ...outlines,
      outline('green', data.green, { golf: 'green' }),
      ...trees,
    ],
  };
}

/** A sheet on the Earth: its (0, 0) at a place of the course sheet, turned clockwise on it. */
export function placed([rightM, upM]: DrawnPoint, turnDeg: number): Omit<DrawnHole, 'features'> {
  const [sin, cos] = [Math.sin(COURSE_SHEET.bearingDeg * RAD_PER_DEG), Math.cos(COURSE_SHEET.bearingDeg * RAD_PER_DEG)];
  const { lon, lat } = frameAt(COURSE_SHEET.tee).toGeo({
    eastM: rightM * cos + upM * sin,
    northM: upM * cos - rightM * sin,
  });
  return { tee: { lon, lat }, bearingDeg: COURSE_SHEET.bearingDeg + turnDeg };
}

/** The points of `right,up right,up …`. */
export function pointsOf(text: string): readonly DrawnPoint[] {
  return text
    .split(/\s+/u)
    .filter((pair) => pair !== '')
    .map((pair) => {
      const [rightM = Number.NaN, upM = Number.NaN] = pair.split(',').map(Number);
      return [rightM, upM];
    });
}
