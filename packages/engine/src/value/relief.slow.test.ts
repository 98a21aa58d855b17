import { describe, expect, it } from 'vitest';
import { distanceM } from '../geometry/segment.ts';
import type { Area } from '../ground/hole.ts';
import type { RulesInForce } from '../ground/rules.ts';
import type { Option } from '../player/option.ts';
import { LIES, type Lie } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { solveHole } from './solve.ts';
import type { HoleSolution } from './solution.ts';
import { area, box, hole, option, part, player, round } from './testdata/toy.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const tee = { at: at(0, 0), lie: 'tee' } as const;
const green = area('green', round(0, 200, 10));
const meadow = area('fairway', box(-150, -60, 150, 300));
const clubs = (...carriesM: number[]): Option[] => carriesM.map((c) => option(`${c}`, [part(1, c, 1)]));
const solved = (areas: Area[], options: Option[], rules: RulesInForce = {}): HoleSolution =>
  solveHole({ ...hole([0, 200], areas), rules }, player(options, 1));
const best = (s: HoleSolution, p: PlanePoint, lie: Lie): number => s.best({ at: p, lie })[0]!.strokes;

describe('a penalty area across the hole', () => {
  const pond = (red: boolean, more: Partial<Area> = {}) =>
    area('penalty', box(-150, 80, 150, 120), { id: 'pond', red, ...more });
  const wet = at(0, 100);

  it('yellow: the ball goes back on the line from the flag to where a club reaches it', () => {
    const s = solved([meadow, green, pond(false)], clubs(100, 150));
    const { state, penaltyStrokes } = s.next(wet, tee);
    expect(penaltyStrokes).toBe(1);
    expect(state.at.eastM).toBeCloseTo(0, 6);
    expect(Math.abs(distanceM(state.at, s.ground.flag) - 150)).toBeLessThan(10);
    // one penalty stroke, one onto the green, one putt
    expect(Math.abs(s.strokesAtRest(wet, tee) - 3)).toBeLessThan(0.15);
  });

  it('red: beside where the ball’s own track crossed; yellow: not beside', () => {
    const along = (red: boolean) => area('penalty', box(20, 0, 60, 190), { id: 'pond', red });
    const [red, yellow] = [true, false].map((c) => solved([meadow, green, along(c)], clubs(105, 140, 60)));
    const rest = at(30, 150);
    for (const [from, crossedM] of [
      [tee, 100],
      [{ at: at(-60, 60), lie: 'fairway' }, 140],
    ] as const) {
      const { state, penaltyStrokes } = red!.next(rest, from);
      expect(penaltyStrokes).toBe(1);
      expect(distanceM(state.at, at(20, crossedM))).toBeLessThan(2.6);
      expect(distanceM(yellow!.next(rest, from).state.at, at(20, crossedM))).toBeGreaterThan(40);
      expect(red!.strokesAtRest(rest, from)).toBeLessThan(yellow!.strokesAtRest(rest, from) + 0.003);
    }
  });

  it('stroke and distance where no drop is cheaper', () => {
    // the tee is the only place from which the one club reaches the green
    const s = solved([meadow, green, pond(false)], clubs(200));
    const { state, penaltyStrokes } = s.next(wet, tee);
    expect(penaltyStrokes).toBe(1);
    expect(state.at.northM).toBeLessThan(12);
    expect(s.strokesAtRest(wet, tee)).toBeLessThanOrEqual(1 + best(s, at(0, 0), 'tee') + 0.003);
  });

  it('as it lies only with a stated pattern, and never from water or a no-play zone', () => {
    const splash = clubs(100).map((o): Option => ({ ...o, byLie: { ...o.byLie, penalty: o.byLie.fairway! } }));
    const open = solved([meadow, green, pond(true)], splash);
    expect(open.next(wet, tee)).toEqual({ state: { at: expect.anything(), lie: 'penalty' }, penaltyStrokes: 0 });
    expect(Math.abs(open.strokesAtRest(wet, tee) - 2)).toBeLessThan(0.15);
    for (const s of [
      solved([meadow, green, pond(true, { barred: true })], splash),
      solved([meadow, green, pond(true)], clubs(100)),
    ]) {
      expect(s.next(wet, tee).penaltyStrokes).toBe(1);
      expect(s.strokesAtRest(wet, tee)).toBeGreaterThan(2.8);
    }
  });
});

describe('out of bounds and lost balls', () => {
  const fairway = area('fairway', box(-20, -60, 20, 300));
  const out = area('out', box(40, -100, 200, 320));
  const gone = at(80, 100);

  it('without E-5: played again from where it was', () => {
    const s = solved([fairway, green, out], clubs(100));
    expect(s.next(gone, tee)).toEqual({ state: tee, penaltyStrokes: 1 });
    expect(s.strokesAtRest(gone, tee)).toBeCloseTo(1 + best(s, at(0, 0), 'tee'), 2);
  });

  it('with E-5: on from the fairway for two strokes, where that is cheaper', () => {
    // four drives in ten go out to the right; one that stays in leaves a stroke of 100 m, a drop one of 150 m
    const left = area('out', box(-200, -100, -25, 320), { id: 'left' });
    const grass: readonly Lie[] = ['fairway', 'rough'];
    const drive = option('drive', [part(0.6, 100, 1), part(0.4, 100, 1, 75)], ['tee']);
    const bag = [drive, option('100', [part(1, 100, 1)], grass), option('150', [part(1, 150, 1)], grass)];
    const [without, e5] = [false, true].map((on) => solved([fairway, green, out, left], bag, { e5: on }));
    // V = 1 + .6 x 2 + .4 (1 + V), and with the rule 1 + .6 x 2 + .4 (2 + 2)
    expect(Math.abs(best(without!, tee.at, 'tee') - 2.6 / 0.6)).toBeLessThan(0.12);
    expect(Math.abs(best(e5!, tee.at, 'tee') - 3.8)).toBeLessThan(0.12);
    const { state, penaltyStrokes } = e5!.next(at(75, 100), tee);
    // it crossed at (40, 53); straight across lies the edge of the fairway, and the drop is two club-lengths in
    expect(penaltyStrokes).toBe(2);
    expect(Math.abs(state.at.eastM - 17.7)).toBeLessThan(2);
    expect(distanceM(state.at, e5!.ground.flag)).toBeGreaterThan(distanceM(at(40, 53.3), e5!.ground.flag) - 0.5);
    const priced = e5!.price(tee, e5!.best(tee)[0]!);
    expect(priced.chances.outOfBounds).toBeCloseTo(0.4, 3);
    expect(Math.abs(priced.strokes - 3.8)).toBeLessThan(0.12);
  });

  it('a chance of a lost ball costs its share of stroke and distance', () => {
    const trees = area('recovery', box(20, -60, 60, 300));
    const [sure, lost] = [0, 0.25].map((q) => solved([fairway, trees, green], clubs(100), { lost: { recovery: q } }));
    const found = at(50, 90);
    expect(lost!.strokesAtRest(found, tee)).toBeCloseTo(
      0.75 * best(lost!, found, 'recovery') + 0.25 * (1 + best(lost!, at(0, 0), 'tee')),
      1,
    );
    expect(best(lost!, at(0, 0), 'tee')).toBeGreaterThan(best(sure!, at(0, 0), 'tee') - 0.003);
  });
});

describe('trouble', () => {
  const fairway = area('fairway', box(-20, -60, 20, 300));
  const trees = area('recovery', box(20, -60, 60, 300));
  const from = { at: at(34, 100), lie: 'recovery' } as const;

  it('has a way out sideways, however far the flag is', () => {
    // from the trees nothing but a stroke of 30 m can be played; from the fairway the flag can be reached
    const chip = option('chip', [part(1, 30, 1)]);
    const s = solved([fairway, trees, green], [...clubs(100).map((o) => without(o, 'recovery')), chip]);
    const [found] = s.best(from);
    expect(Math.abs(found!.strokes - 3)).toBeLessThan(0.2);
    expect(Math.sin(found!.bearingRad)).toBeLessThan(-0.4);
    expect(Math.abs(s.strokesAtRest(from.at, tee) - found!.strokes)).toBeLessThan(0.1);
  });

  it('that nothing can be played from is left by Rule 19: beside for one stroke, behind the sand for two', () => {
    const sand = area('bunker', box(-20, 95, 20, 110));
    const only = clubs(100, 150).map((o) => without(without(o, 'recovery'), 'bunker'));
    const s = solved([fairway, trees, green, sand], only);
    expect(s.next(at(21, 60), tee)).toMatchObject({ penaltyStrokes: 1, state: { lie: 'fairway' } });
    const bunkered = s.next(at(0, 105), tee);
    expect(bunkered.penaltyStrokes).toBe(2);
    expect(bunkered.state.lie).toBe('fairway');
    expect(bunkered.state.at.northM).toBeLessThan(95);
  });

  it('that is worse than a penalty stroke is dropped out of', () => {
    // half a metre a stroke is all that the trees allow
    const wild = clubs(100).map((o): Option => ({
      ...o,
      byLie: { ...o.byLie, recovery: { parts: [part(1, 0.5, 0.1)], rest: true } },
    }));
    const s = solved([fairway, trees, green], wild);
    const edge = { at: at(21.5, 100), lie: 'recovery' } as const;
    const relieved = s.unplayable(edge);
    expect(relieved?.penaltyStrokes).toBe(1);
    expect(relieved?.state.lie).toBe('fairway');
    expect(s.next(edge.at, tee)).toEqual(relieved);
    expect(s.unplayable({ at: at(0, 100), lie: 'fairway' })).toBeUndefined();
  });
});

/** The option, not to be played from a lie. */
const without = (o: Option, lie: Lie): Option => ({
  ...o,
  byLie: Object.fromEntries(LIES.filter((l) => l !== lie && o.byLie[l] !== undefined).map((l) => [l, o.byLie[l]!])),
});
