import type { Fault, HazardNumbers } from '@leeway/contract';
import { capital, type Units, wholeLength } from '@leeway/engine';

/** The words of the Ground page. */
export const GROUND = {
  lead: 'What is out there: your courses, from a map or from numbers you know.',
  courses: 'Your courses',
  noCourses: 'No courses of your own yet.',
  noCoursesWhy:
    'A length is enough for a first hole. What lies on it can be added line by line, or a map file brought in.',
  columns: { course: 'course', from: 'from' },
  typed: 'typed numbers',
  plan: 'Plan',
  more: 'Add or change holes',
  newHole: 'A hole by numbers',
  numbersLead:
    'From a card, a book or memory. Lengths along the line of play, from the tee to the middle of the green.',
  fields: {
    course: 'Course',
    hole: 'Hole',
    name: 'Name, if it has one',
    length: 'Length',
    par: 'Par',
    bearing: 'Plays towards',
    turnAt: 'Turns at',
    turnBy: 'Turns by',
    fairway: 'Fairway, wide',
    depth: 'Green, deep',
    width: 'Green, wide',
    angle: 'Green, turned',
  },
  degrees: 'degrees',
  degreesRight: '° right, − left',
  parUnit: 'by its length unless said',
  more2: 'Turn, green and bearing',
  hazards: 'What lies on it',
  hazardColumns: { kind: 'what', reach: 'to reach', carry: 'to carry', side: 'where', off: 'off the line' },
  addHazard: 'Add sand, water, trees or bounds',
  removeHazard: 'take out',
  noHazards: 'Nothing yet.',
  kinds: { sand: 'sand', water: 'water', trees: 'trees', out: 'out of bounds' } satisfies {
    readonly [K in HazardNumbers['kind']]: string;
  },
  sides: { left: 'left', right: 'right', across: 'across' } satisfies { readonly [S in HazardNumbers['side']]: string },
  keep: 'Keep this hole',
  keepPlan: 'Keep it and plan it',
  another: 'Another hole',
  drawing: 'The hole as it is typed',
  needLength: (units: Units): string => (units === 'yd' ? 'A length from 28 to 980 yd.' : 'A length from 25 to 900 m.'),
  badFigure: 'A figure is missing or is none.',
  kept: 'Kept.',
  holesOf: 'Holes',
  unnamed: 'My course',
  file: 'From a map file',
  drop: 'Drop a map file here',
  pick: 'or choose it',
  dropWhy: 'GeoJSON, OSM XML or the JSON of an OSM query, with golf tags. You see what is in it before it is kept.',
  reading: 'Reading the file.',
  keepFile: 'Keep this course',
  leave: 'Leave the file',
  faults: 'What was noticed',
  fetching: 'Fetching the courses.',
  noStore: 'Nothing can be kept: the app runs without a store. Start it with: leeway serve --data FOLDER',
  remove: 'put away',
  removed: 'The course is put away.',
  undo: 'Undo',
} as const;

export const faultLine = ({ at, found, expected, done }: Fault): string =>
  `${at === undefined ? '' : `${capital(at)}: `}found ${found}, expected ${expected}${done === undefined ? '' : `; ${done}`}`;

export const holeLine = (
  h: { readonly hole: string; readonly name?: string; readonly par: number; readonly lengthM: number },
  units: Units,
): string =>
  `${h.hole}${h.name === undefined ? '' : ` ${h.name}`}: par ${h.par}, ${wholeLength(h.lengthM, units)} ${units}`;

export const holeKey = (hole: string): string => `Hole ${hole}`;
export const hazardField = (i: number, what: string): string => `${capital(what)}, line ${i + 1}`;
export const putsAway = (course: string): string => `Put away ${course}`;
export const countWords = (n: number): string => `${n} hole${n === 1 ? '' : 's'}`;
