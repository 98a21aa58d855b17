/** A shot as read: carries in metres as measured that day, not moved to the reference day. */
export interface ShotRow {
  readonly file: string;
  /** 1-based line of the file. */
  readonly line: number;
  /** As spelled. */
  readonly club: string;
  readonly swing: string;
  /** Ball to pitch in a straight line. */
  readonly carryM: number;
  /** To the right of the aim at the pitch; left is negative. */
  readonly sideM?: number;
  readonly player?: string;
  /** As written. */
  readonly date?: string;
  /** Every other column that was read: SI and degrees for measures, the words for the rest. */
  readonly readings: ShotReadings;
}

/** What a column of a shot file can mean. */
export const SHOT_COLUMNS = [
  'club',
  'carry',
  'down the line',
  'side',
  'swing',
  'total',
  'ball speed',
  'launch',
  'direction',
  'spin',
  'axis',
  'apex',
  'descent',
  'strike',
  'height on face',
  'tee height',
  'low point',
  'ball',
  'player',
  'date',
  'temperature',
  'altitude',
  'wind speed',
  'wind from',
  'bearing',
  'slope',
] as const;
export type ShotColumn = (typeof SHOT_COLUMNS)[number];

export type ShotReadings = { readonly [C in ShotColumn]?: number | string };

/** What a strike is called that was plainly no good one, when nothing closer is said. */
export const MISHIT = 'mishit';

/** A reader's choices for a shot file. */
export interface ShotReading {
  /** For columns that do not say. */
  readonly units: 'yd' | 'm';
  /** What headings mean, in place of what the reader makes of them; `ignore` leaves a column unread. */
  readonly map?: ReadonlyMap<string, ShotColumn | 'ignore'>;
}
