import { describe, expect, it } from 'vitest';
import type { Area, HoleGround } from '../ground/hole.ts';
import type { NormalPart, Option, PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { solveHole } from './solve.ts';
import type { HoleSolution } from './solution.ts';
import { referenceHole, referencePlayer } from './testdata/load.ts';
import { area, box, hole, round } from './testdata/toy.ts';

const tee = (s: HoleSolution): number => s.best({ at: s.ground.ball, lie: 'tee' })[0]!.strokes;
const lean: PlayerModel = (() => {
  const p = referencePlayer('player');
  const kept = p.options.filter((o) => o.swing.endsWith('full') || o.swing.startsWith('touch'));
  return { ...p, options: kept };
})();

/** The ground with every point carried through a map of the plane. */
function carried(g: HoleGround, to: (p: PlanePoint) => PlanePoint): HoleGround {
  const areas = g.areas.map((a): Area => {
    const { outer, inner } = a.polygon;
    return { ...a, polygon: { outer: outer.map(to), inner: inner.map((r) => r.map(to)) } };
  });
  return { ...g, areas, ball: to(g.ball), flag: to(g.flag), line: g.line.map(to) };
}

/** The patterns of an option with every part changed. */
const mapped = (o: Option, change: (p: NormalPart) => NormalPart): Option['byLie'] =>
  Object.fromEntries(
    Object.entries(o.byLie).map(([lie, pattern]) => [lie, { ...pattern, parts: pattern.parts.map(change) }]),
  );

const par3 = referenceHole('h1_par3_125');
const plain = solveHole(par3, lean);

describe('laws of the solver', () => {
  it('turning and moving a hole changes nothing', () => {
    const turned = carried(par3, ({ eastM, northM }) => ({
      eastM: 640 + 0.6 * eastM + 0.8 * northM,
      northM: -230 - 0.8 * eastM + 0.6 * northM,
    }));
    expect(Math.abs(tee(solveHole(turned, lean)) - tee(plain))).toBeLessThan(0.001);
  });

  it('a mirrored hole and a mirrored player play the same', () => {
    const mirrored = carried(par3, ({ eastM, northM }) => ({ eastM: -eastM, northM }));
    const player = referencePlayer('player_mirror');
    const options = player.options.filter((o) => o.swing.endsWith('full') || o.swing.startsWith('touch'));
    const other = solveHole(mirrored, { ...player, options });
    expect(Math.abs(tee(other) - tee(plain))).toBeLessThan(0.003);
    const a = plain.best({ at: plain.ground.ball, lie: 'tee' })[0]!;
    const b = other.best({ at: other.ground.ball, lie: 'tee' })[0]!;
    expect(b.option.swing).toBe(a.option.swing);
    expect(Math.abs(Math.sin(a.bearingRad) + Math.sin(b.bearingRad))).toBeLessThan(0.01);
  });

  it('added water never helps, even where it lies behind', () => {
    for (const where of [box(8, 60, 30, 100), box(-30, 140, 30, 150)]) {
      const pond = area('penalty', where, { id: 'pond', red: true });
      const areas = [...par3.areas.slice(0, -1), pond, ...par3.areas.slice(-1)];
      expect(tee(solveHole({ ...par3, areas }, lean))).toBeGreaterThan(tee(plain) - 0.003);
    }
  });

  it('an option taken away never helps', () => {
    const best = plain.best({ at: plain.ground.ball, lie: 'tee' })[0]!.option;
    const without = { ...lean, options: lean.options.filter((o) => o !== best) };
    expect(tee(solveHole(par3, without))).toBeGreaterThan(tee(plain) - 0.003);
  });

  it('a longer hitter with the same angles is not worse on open ground, on average over lengths', () => {
    const longer = (p: NormalPart): NormalPart => ({
      ...p,
      alongM: 1.1 * p.alongM,
      acrossM: 1.1 * p.acrossM,
      sdAlongM: 1.1 * p.sdAlongM,
      sdAcrossM: 1.1 * p.sdAcrossM,
    });
    // full swings grow; the short game is the same
    const long = {
      ...lean,
      options: lean.options.map((o) => (o.full ? { ...o, byLie: mapped(o, longer) } : o)),
    };
    const open = (lengthM: number): HoleGround =>
      hole([0, lengthM], [area('fairway', box(-90, -30, 90, lengthM + 70)), area('green', round(0, lengthM, 13))]);
    const gain = [250, 300, 350, 400, 450, 500].map(
      (lengthM) => tee(solveHole(open(lengthM), lean)) - tee(solveHole(open(lengthM), long)),
    );
    expect(gain.reduce((sum, g) => sum + g, 0) / gain.length).toBeGreaterThan(-0.003);
  });

  it('without sand and trees the hole is as easy as published', () => {
    const open = par3.areas.filter((a) => a.surface !== 'bunker' && a.surface !== 'recovery');
    const solution = solveHole({ ...par3, areas: open }, referencePlayer('player'));
    expect(Math.abs(tee(solution) - 2.9234)).toBeLessThan(0.006);
  });

  it('water that cannot be dropped beside costs stroke and distance', () => {
    // water to the very edge of the map on all sides of a short carry: no drop is legal
    const sea = area('penalty', box(-400, 10, 400, 400), { id: 'sea', red: false });
    const green = par3.areas.find((a) => a.surface === 'green')!;
    const back = area('out', box(-400, -400, 400, -3), { id: 'back' });
    const island: HoleGround = { ...par3, areas: [sea, green, back] };
    const solution = solveHole(island, lean);
    const from = { at: island.ball, lie: 'tee' as const };
    const best = solution.best(from)[0]!;
    const wet = solution.price(from, best).chances.penalty;
    const again = solution.strokesAtRest({ eastM: 30, northM: 120 }, from);
    expect(wet).toBeGreaterThan(0.05);
    expect(again).toBeLessThanOrEqual(1 + best.strokes + 0.01);
    expect(again).toBeGreaterThan(best.strokes);
  });
});
