import { describe, expect, it } from 'vitest';
import { airOf, CALM, type Day, REFERENCE } from '../day/day.ts';
import { REFERENCE_CONDITIONS } from '../day/normalise.ts';
import { calibrate } from '../flight/calibrate.ts';
import { launchFamily } from '../flight/family.ts';
import { flyInto } from '../flight/fly.ts';
import { emptyFlight, type Launch } from '../flight/launch.ts';
import { randomFrom } from '../math/random.ts';
import type { NormalPart } from '../player/option.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { flightOf } from '../reach/reach.ts';
import { LIE_CODES, type Weapon } from './arsenal.ts';
import { Field } from './field.ts';
import { puttsAt } from './putts.ts';
import { cellAt, FAIRWAY, GREEN, OUT, PENALTY, TEE } from './raster.ts';
import { cheapest, worthTrying } from './search.ts';
import { solveField } from './sweep.ts';
import { referenceHole, referencePlayer, type HoleName, type PlayerName } from './testdata/load.ts';

/** Plays a hole many times by the solver's own policy, ball by ball on the painted ground, and gives the mean score with its standard error. */
function played(
  holeName: HoleName,
  playerName: PlayerName,
  rounds: number,
  day: Day = REFERENCE,
): { mean: number; se: number; value: number } {
  const field = new Field(referenceHole(holeName), referencePlayer(playerName), day);
  const loftOf = (w: Weapon): number => flightOf(field.player.options[w.option]!, w.pattern).loftDeg;
  const flown = flownIn(day, field.frame.bearingRad / RAD_PER_DEG, loftOf);
  const { evaluator, relief } = solveField(field, { tolerance: 0.005, most: 8 });
  const random = randomFrom(7);
  const known = new Map<string, { weapon: Weapon; turn: number }>();
  // the policy is looked up by whole metres: a touch dearer than the best, never cheaper
  const policy = (lie: number, u: number, v: number): { weapon: Weapon; turn: number } => {
    const [x, y] = [Math.round(u), Math.round(v)];
    const key = `${lie} ${x} ${y}`;
    let found = known.get(key);
    if (found === undefined) {
      const best = cheapest(
        evaluator,
        worthTrying(field.arsenal.get(lie)!, Math.hypot(x, y), Math.atan2(-x, -y)),
        x,
        y,
        3,
      );
      found = { weapon: best.weapon, turn: best.bearing - Math.atan2(-x, -y) };
      known.set(key, found);
    }
    return found;
  };
  const start = { u: field.frame.u(field.ground.ball), v: field.frame.v(field.ground.ball) };
  const score = (): number => {
    let { u, v } = start;
    let lie = LIE_CODES.tee;
    let strokes = 0;
    for (;;) {
      const { weapon, turn } = policy(lie, u, v);
      let left = random.next();
      const part = weapon.pattern.parts.find((p) => (left -= p.weight) < 0) ?? weapon.pattern.parts[0]!;
      const [z, y] = [random.normal(), random.normal()];
      const bearing = turn + Math.atan2(-u, -v);
      const [onM, overM] = flown(weapon, part, bearing / RAD_PER_DEG);
      const a = part.alongM + onM + part.sdAlongM * z;
      const r = part.acrossM + overM + part.sdAcrossM * (part.corr * z + Math.sqrt(1 - part.corr ** 2) * y);
      let to = {
        u: u + a * Math.sin(bearing) + r * Math.cos(bearing),
        v: v + a * Math.cos(bearing) - r * Math.sin(bearing),
      };
      strokes++;
      const { u0, u1, v0, v1 } = field.raster.box;
      const inside = to.u > u0 && to.u < u1 && to.v > v0 && to.v < v1;
      let code = inside ? field.raster.surface[cellAt(field.raster, to.u, to.v)]! : OUT;
      if (code === OUT || code === PENALTY) {
        strokes++;
        if (code === OUT) continue;
        const length = Math.hypot(to.u - u, to.v - v);
        const drop = relief?.relief(to.u, to.v, (to.u - u) / length, (to.v - v) / length);
        if (drop === undefined) continue;
        strokes += drop.penaltyStrokes - 1;
        to = drop;
        code = field.raster.surface[cellAt(field.raster, to.u, to.v)]!;
      }
      if (code === GREEN) return strokes + puttsAt(field.putts, Math.hypot(to.u, to.v));
      ({ u, v } = to);
      lie = code === TEE ? FAIRWAY : code;
    }
  };
  let sum = 0;
  let second = 0;
  for (let i = 0; i < rounds; i++) {
    const s = score();
    sum += s;
    second += s * s;
  }
  const mean = sum / rounds;
  const weapons = worthTrying(field.arsenal.get(LIE_CODES.tee)!, Math.hypot(start.u, start.v), 0);
  const value = cheapest(evaluator, weapons, start.u, start.v, mean).strokes;
  return { mean, se: Math.sqrt((second / rounds - mean * mean) / rounds), value };
}

/** How much farther along and across a part's mean lands in a day than its carry, by a flight of its own. */
function flownIn(
  day: Day,
  axisDeg: number,
  loftOf: (w: Weapon) => number,
): (w: Weapon, part: NormalPart, bearingDeg: number) => readonly [number, number] {
  const launches = new Map<NormalPart, Launch>();
  const out = emptyFlight();
  return (w, part, bearingDeg) => {
    if (day === REFERENCE) return [0, 0];
    let launch = launches.get(part);
    if (launch === undefined) {
      const found = calibrate(launchFamily(loftOf(w)), part.alongM, loftOf(w), REFERENCE_CONDITIONS);
      if (found.status === 'too short') return [0, 0];
      if (found.status !== 'found') throw new Error(found.status);
      launches.set(part, (launch = found.launch));
    }
    flyInto(out, launch, airOf(day, axisDeg + bearingDeg));
    return [out.carryM - part.alongM, out.sideM];
  };
}

describe('holes played by the policy', () => {
  it.each([
    ['h1_par3_125', 'player'],
    ['t1_symmetric', 'player_sym'],
  ] as const)('%s: the mean score is the value', (hole, player) => {
    const { mean, se, value } = played(hole, player, 200_000);
    expect(se).toBeLessThan(0.002);
    expect(Math.abs(mean - value)).toBeLessThan(3 * se + 0.003);
  });

  it('in 6 m/s across and against, each ball flown by itself, the mean score is the value', () => {
    const day = { ...REFERENCE, wind: { ...CALM, speedMps: 6, fromDeg: 50 } };
    const { mean, se, value } = played('h1_par3_125', 'player', 100_000, day);
    expect(se).toBeLessThan(0.003);
    expect(Math.abs(mean - value)).toBeLessThan(3 * se + 0.003);
  });
});
