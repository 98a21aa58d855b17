import type { HazardNumbers, HoleNumbers } from '@leeway/contract';
import { type Units, YARD_M } from '@leeway/engine';

/** A hole as it stands in the form: every figure as text, in the units of the page. */
export interface TypedHole {
  readonly hole: string;
  readonly name: string;
  readonly length: string;
  readonly par: string;
  readonly bearing: string;
  readonly turnAt: string;
  readonly turnBy: string;
  readonly fairway: string;
  readonly depth: string;
  readonly width: string;
  readonly angle: string;
  readonly hazards: readonly TypedHazard[];
}

export interface TypedHazard {
  readonly kind: HazardNumbers['kind'];
  readonly reach: string;
  readonly carry: string;
  readonly side: HazardNumbers['side'];
  readonly off: string;
}

const perUnit = (units: Units): number => (units === 'yd' ? YARD_M : 1);
/** A green of no told size. */
const USUAL_GREEN = { yd: { depth: '30', width: '26' }, m: { depth: '27', width: '24' } } as const;

export const emptyHole = (hole: string, units: Units): TypedHole => ({
  hole,
  name: '',
  length: '',
  par: '',
  bearing: '',
  turnAt: '',
  turnBy: '',
  fairway: '',
  ...USUAL_GREEN[units],
  angle: '',
  hazards: [],
});

export const emptyHazard: TypedHazard = { kind: 'sand', reach: '', carry: '', side: 'right', off: '' };

/** A figure: "14", "14,5", "−20"; `undefined` where nothing stands, `NaN` for what is none. */
export function readFigure(text: string): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (plain === '') return undefined;
  return /^-?\d{1,4}(?:\.\d+)?$/.test(plain) ? Number(plain) : NaN;
}

/** The numbers of a typed hole; `undefined` while a figure is missing or is none. The server holds them to their bounds. */
export function numbersOf(typed: TypedHole, units: Units): HoleNumbers | undefined {
  const per = perUnit(units);
  let sound = true;
  const optional = (text: string, scale = 1): number | undefined => {
    const figure = readFigure(text);
    if (Number.isNaN(figure)) sound = false;
    return figure === undefined ? undefined : figure * scale;
  };
  const needed = (text: string, scale = 1): number => {
    const figure = optional(text, scale);
    if (figure === undefined) sound = false;
    return figure ?? 0;
  };
  const set = <K extends string>(key: K, value: number | undefined): { readonly [N in K]?: number } =>
    (value === undefined ? {} : { [key]: value }) as { readonly [N in K]?: number };
  const turnBy = optional(typed.turnBy);
  const bearing = optional(typed.bearing);
  const name = typed.name.trim();
  const numbers = {
    hole: typed.hole.trim().toUpperCase(),
    ...(name === '' ? {} : { name }),
    ...set('par', optional(typed.par)),
    lengthM: needed(typed.length, per),
    ...set('bearingDeg', bearing),
    ...(turnBy === undefined && typed.turnAt.trim() === ''
      ? {}
      : { turn: { atM: needed(typed.turnAt, per), byDeg: needed(typed.turnBy) } }),
    ...set('fairwayWidthM', optional(typed.fairway, per)),
    green: {
      depthM: needed(typed.depth, per),
      widthM: needed(typed.width, per),
      ...set('turnedDeg', optional(typed.angle)),
    },
    hazards: typed.hazards
      .filter(({ reach, carry }) => `${reach}${carry}`.trim() !== '')
      .map(({ kind, reach, carry, side, off }) => ({
        kind,
        reachM: needed(reach, per),
        carryM: needed(carry, per),
        side,
        ...(side === 'across' ? {} : set('offM', optional(off, per))),
      })),
  };
  return sound ? numbers : undefined;
}

/** The form of numbers that were kept, to be changed. */
export function typedOf(numbers: HoleNumbers, units: Units): TypedHole {
  const length = (m: number | undefined): string =>
    m === undefined ? '' : String(Math.round((10 * m) / perUnit(units)) / 10);
  const figure = (n: number | undefined): string => (n === undefined ? '' : String(n));
  return {
    hole: numbers.hole,
    name: numbers.name ?? '',
    length: length(numbers.lengthM),
    par: figure(numbers.par),
    bearing: figure(numbers.bearingDeg),
    turnAt: length(numbers.turn?.atM),
    turnBy: figure(numbers.turn?.byDeg),
    fairway: length(numbers.fairwayWidthM),
    depth: length(numbers.green.depthM),
    width: length(numbers.green.widthM),
    angle: figure(numbers.green.turnedDeg),
    hazards: numbers.hazards.map(({ kind, reachM, carryM, side, offM }) => ({
      kind,
      reach: length(reachM),
      carry: length(carryM),
      side,
      off: length(offM),
    })),
  };
}

/** The number after the highest so far. */
export const nextNumber = (holes: readonly HoleNumbers[]): string =>
  String(Math.min(99, 1 + holes.reduce((most, { hole }) => Math.max(most, Number.parseInt(hole, 10)), 0)));
