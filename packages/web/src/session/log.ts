import type { Session } from '@leeway/contract';
import type { Call, Units } from '@leeway/engine';
import type { Option } from './calls.ts';

/** Where the wind comes from, seen down the line of aim, and its angle clockwise from the line. */
export const WIND_FROM_DEG = { calm: undefined, into: 0, right: 90, helping: 180, left: 270 } as const;
export type WindFrom = keyof typeof WIND_FROM_DEG;

/** How a session is set up, as it is typed. */
export interface SetUp {
  readonly target: string;
  readonly surface: 'mat' | 'turf';
  readonly ball: 'range' | 'own';
  readonly wind: WindFrom;
  /** mph, or metres a second. */
  readonly speed: string;
  /** The clubs to choose from. */
  readonly options: readonly Option[];
  /** Balls in all. */
  readonly most: number;
  /** How well each carry is to be known, metres, 95 in 100; as well as a choice of club needs it unless said. */
  readonly withinM?: number;
}

/** A ball of a session, in the order they were hit. */
export interface HitBall extends Option {
  readonly id: string;
  readonly carryM: number;
  readonly sideM?: number;
  readonly mishit?: true;
}

/** A session under way, as the browser keeps it. */
export interface SessionLog {
  /** The record that its balls name, and the one that corrects it when it was set up anew. */
  readonly session: string;
  readonly stands: string;
  readonly setUp: SetUp;
  /** What is called, as it was worked out when it was set up. */
  readonly order: readonly Call[];
  readonly balls: readonly HitBall[];
}

const MPS_PER_MPH = 0.44704;
const SPEED = /^\d{1,2}(?:[.,]\d)?$/;

/** Metres a second of a typed wind speed; `undefined` when it is none. */
export function windMps({ wind, speed }: Pick<SetUp, 'wind' | 'speed'>, units: Units): number | undefined {
  if (wind === 'calm') return 0;
  const plain = speed.trim();
  return SPEED.test(plain) ? Number(plain.replace(',', '.')) * (units === 'yd' ? MPS_PER_MPH : 1) : undefined;
}

/** The session as it is kept. */
export function sessionOf(setUp: SetUp, date: string, units: Units): Session {
  const { target, surface, ball, wind } = setUp;
  const fromDeg = WIND_FROM_DEG[wind];
  const speedMps = windMps(setUp, units);
  return {
    date,
    purpose: 'gapping',
    ball,
    surface,
    ...(target.trim() === '' ? {} : { target: target.trim().slice(0, 80) }),
    ...(fromDeg === undefined
      ? { lineWind: { speedMps: 0, fromDeg: 0 } }
      : speedMps === undefined
        ? {}
        : { lineWind: { speedMps, fromDeg } }),
  };
}

const keyOf = (owner: string): string => `leeway-session ${owner}`;

export function readLog(owner: string): SessionLog | undefined {
  try {
    const text = localStorage.getItem(keyOf(owner));
    return text === null ? undefined : (JSON.parse(text) as SessionLog);
  } catch {
    return undefined;
  }
}

/** Writes a session down, or takes it away; a browser that keeps nothing forgets it when the page is closed, though the server has its balls. */
export function writeLog(owner: string, log: SessionLog | undefined): void {
  try {
    if (log === undefined) localStorage.removeItem(keyOf(owner));
    else localStorage.setItem(keyOf(owner), JSON.stringify(log));
  } catch {
    // the outbox says so
  }
}
