import type { FlightAir, Launch } from '../launch.ts';

interface State {
  readonly at: Vector;
  readonly v: Vector;
  readonly logSpin: number;
}
type Vector = readonly [number, number, number];

/** Where a plain flight lands. */
export interface PlainLanding {
  readonly carryM: number;
  readonly sideM: number;
  readonly timeS: number;
  readonly spinRpm: number;
}

const MASS = 0.04593;
const RADIUS = 0.021335;
const G = 9.80665;

const plus = (a: Vector, b: Vector, by = 1): Vector => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
const times = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
const crossed = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);

/**
 * The rival and the witness of the kernel: the published formulas as they are written, with vectors and objects, the logarithm of the spin
 * in the state, every function called, and small steps.
 */
export function plainFlight(launch: Launch, air: FlightAir, targetHeightM = 0, stepS = 0.01): PlainLanding {
  const deg = Math.PI / 180;
  const [rise, turn, tilt] = [launch.launchDeg * deg, (launch.azimuthDeg ?? 0) * deg, (launch.axisDeg ?? 0) * deg];
  const axis: Vector = [
    -Math.cos(tilt) * Math.sin(turn),
    -Math.sin(tilt),
    Math.cos(tilt) * Math.cos(turn),
  ];
  const slope = slopeIn(air, axis);
  let state: State = {
    at: [0, 0, 0],
    v: times([Math.cos(rise) * Math.cos(turn), Math.sin(rise), Math.cos(rise) * Math.sin(turn)], launch.speedMps),
    logSpin: Math.log((launch.spinRpm * 2 * Math.PI) / 60),
  };
  for (let timeS = 0; ; timeS += stepS) {
    const next = stepped(state, slope, stepS);
    if (next.v[1] < 0 && next.at[1] <= targetHeightM) {
      const part = (state.at[1] - targetHeightM) / (state.at[1] - next.at[1]);
      const end = stepped(state, slope, part * stepS);
      return {
        carryM: end.at[0],
        sideM: end.at[2],
        timeS: timeS + part * stepS,
        spinRpm: (Math.exp(end.logSpin) * 60) / (2 * Math.PI),
      };
    }
    state = next;
  }
}

type Slope = (s: State) => State;

function slopeIn(air: FlightAir, axis: Vector): Slope {
  return ({ at, v, logSpin }) => {
    const share =
      Math.log((Math.max(1, at[1]) + air.roughnessM) / air.roughnessM) /
      Math.log((air.windHeightM + air.roughnessM) / air.roughnessM);
    const through = plus(v, [air.tailMps * share, 0, air.rightMps * share], -1);
    const speed = size(through);
    const lift = crossed(axis, through);
    const across = size(lift) / speed;
    const spinFactor = (RADIUS * Math.exp(logSpin) * across) / speed;
    const s = 0.48 * Math.tanh(spinFactor / 0.48);
    const r = Math.min(2.4, Math.max(0.45, (2 * RADIUS * speed * air.densityKgM3) / air.viscosityPaS / 1e5));
    const drag = 0.1375 + 0.0192 * r + 0.583 * s + 0.502 * s ** 2;
    const raised = Math.max(0, 0.082 + 0.99 * s - 0.023 / r ** 2) * (1 - Math.exp(-((spinFactor / 0.015) ** 2)));
    const k = (air.densityKgM3 * Math.PI * RADIUS ** 2) / (2 * MASS);
    const force = plus(times(through, -k * speed * drag), lift, (k * speed ** 2 * raised) / size(lift));
    return { at: v, v: plus(force, [0, -G, 0]), logSpin: -((2e-5 * air.densityKgM3) / 1.2) * (speed / RADIUS) };
  };
}

function moved(s: State, slope: State, by: number): State {
  return { at: plus(s.at, slope.at, by), v: plus(s.v, slope.v, by), logSpin: s.logSpin + by * slope.logSpin };
}

function stepped(s: State, slope: Slope, h: number): State {
  const a = slope(s);
  const b = slope(moved(s, a, h / 2));
  const c = slope(moved(s, b, h / 2));
  const d = slope(moved(s, c, h));
  return moved(moved(moved(moved(s, a, h / 6), b, h / 3), c, h / 3), d, h / 6);
}
