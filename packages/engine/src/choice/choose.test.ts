import { describe, expect, test } from 'vitest';
import { distanceM } from '../geometry/segment.ts';
import type { Area, Caution, HoleGround, Ring } from '../ground/hole.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { solveHole } from '../value/solve.ts';
import type { BallState, Candidate, HoleSolution } from '../value/solution.ts';
import { referenceHole, referencePlayer } from '../value/testdata/load.ts';
import { choose, type Choice } from './choose.ts';
import { box } from './testdata/madeUp.ts';
import { offsetOf } from './view.ts';
import { wordReason } from './wordReason.ts';

const player = referencePlayer('player');
const par3 = referenceHole('h1_par3_125');
const tee = (ground: HoleGround): BallState => ({ at: ground.ball, lie: 'tee' });

const solution = solveHole(par3, player);

function choiceOn(solved: HoleSolution, who: PlayerModel = player): Choice {
  const choice = choose(solved, who, tee(solved.ground));
  if (choice === undefined) throw new Error('no stroke');
  return choice;
}

const plainCase = choiceOn(solution);
const sum = (shares: object): number =>
  Object.values(shares).reduce((total: number, share: number) => total + share, 0);

describe('on the reference par 3', () => {
  test('the answer and straight at the flag cost what the reference says', () => {
    expect(plainCase.answer.priced.option.swing).toBe('9I-full');
    expect(Math.abs(plainCase.answer.strokes - 2.9399)).toBeLessThan(0.01);
    expect(plainCase.plain?.kind).toBe('flag');
    expect(Math.abs((plainCase.plain?.shown.strokes ?? 0) - 2.9591)).toBeLessThan(0.01);
  });

  test('the chances are of every ball, and the costs by area make up the expected strokes', () => {
    const { priced } = plainCase.answer;
    expect(sum(priced.chances)).toBeCloseTo(1, 6);
    expect([...priced.areaCosts.values()].reduce((a, b) => a + b, 0)).toBeCloseTo(priced.strokes, 6);
  });

  test('the aim lies on the aim line at the mean distance, the spot where the good strike finishes', () => {
    const { aim, spot, priced } = plainCase.answer;
    const good = priced.option.byLie.tee?.parts[0];
    expect(offsetOf(aim, par3.ball, priced.bearingRad).acrossM).toBeCloseTo(0, 9);
    expect(distanceM(par3.ball, aim)).toBeCloseTo(good?.alongM ?? 0, 6);
    expect(distanceM(aim, spot)).toBeCloseTo(Math.abs(good?.acrossM ?? 0), 6);
  });

  test('alternatives are at most two, none cheaper, each another option or plainly another spot', () => {
    expect(plainCase.alternatives.length).toBeGreaterThan(0);
    expect(plainCase.alternatives.length).toBeLessThanOrEqual(2);
    for (const { shown } of plainCase.alternatives) {
      expect(shown.strokes).toBeGreaterThanOrEqual(plainCase.answer.strokes);
      const same = shown.priced.option === plainCase.answer.priced.option;
      if (same) expect(distanceM(shown.spot, plainCase.answer.spot)).toBeGreaterThanOrEqual(10);
    }
  });

  test('under 0.02 apart, the flag line is called a tie and no loss is claimed', () => {
    expect(plainCase.reasons.map((r) => r.kind)).toContain('plain tie');
    const words = plainCase.reasons.map((r) => wordReason(r, plainCase, par3, 'yd')).join(' ');
    expect(words).toMatch(/is a tie/);
    expect(words).not.toMatch(/because/);
  });
});

const flip = (p: PlanePoint): PlanePoint => ({ eastM: -p.eastM, northM: p.northM });
const flipRing = (ring: Ring): Ring => ring.map(flip);
const flipArea = (a: Area): Area => ({
  ...a,
  polygon: { outer: flipRing(a.polygon.outer), inner: a.polygon.inner.map(flipRing) },
});
const mirrored = (g: HoleGround): HoleGround => ({
  ...g,
  ball: flip(g.ball),
  flag: flip(g.flag),
  line: g.line.map(flip),
  areas: g.areas.map(flipArea),
});

test('a mirrored hole and player give the mirrored spot, and the arms of room change sides', () => {
  const other = choiceOn(solveHole(mirrored(par3), referencePlayer('player_mirror')), referencePlayer('player_mirror'));
  expect(other.answer.priced.option.swing).toBe(plainCase.answer.priced.option.swing);
  expect(Math.abs(other.answer.strokes - plainCase.answer.strokes)).toBeLessThan(0.003);
  expect(distanceM(flip(other.answer.spot), plainCase.answer.spot)).toBeLessThan(1);
  plainCase.room.forEach((arms, i) => {
    const swapped = other.room[i];
    for (const [mine, theirs] of [
      [arms.leftM, swapped?.rightM],
      [arms.rightM, swapped?.leftM],
      [arms.shortM, swapped?.shortM],
      [arms.longM, swapped?.longM],
    ]) {
      expect(mine === null).toBe(theirs === null);
      expect(Math.abs((mine ?? 0) - (theirs ?? 0))).toBeLessThan(2);
    }
  });
});

const POND: Area = { ...box('pond', 'penalty', [9, 90, 38, 135]), red: true };
const beforeOut = par3.areas.findIndex((a) => a.surface === 'out');
const withPond: HoleGround = { ...par3, areas: par3.areas.toSpliced(beforeOut, 0, POND) };

describe('with a pond beside the flag', () => {
  const choice = choiceOn(solveHole(withPond, player));
  const words = (c: Choice, g: HoleGround): string => c.reasons.map((r) => wordReason(r, c, g, 'yd')).join('\n');

  test('the reason names the pond and the two chances that decide', () => {
    expect(words(choice, withPond)).toMatch(/because \d+ in 100 .* finish in the pond; from the spot (\d+|none)/);
    const [first] = choice.reasons;
    if (first?.kind !== 'plain' || first.because.kind !== 'danger') throw new Error('no danger named');
    expect(first.because.landmark.areas).toEqual([beforeOut]);
    const index = beforeOut;
    expect(first.because.here).toBeCloseTo(choice.answer.priced.areaChances.get(index) ?? 0, 9);
    expect(first.because.there).toBeCloseTo(choice.plain?.shown.priced.areaChances.get(index) ?? 0, 9);
    expect(first.because.there).toBeGreaterThan(first.because.here);
  });

  test('without the pond the reason is another', () => {
    expect(words(plainCase, par3)).not.toMatch(/pond/);
  });
});

describe('where the pattern should not reach', () => {
  const road = (eastM: number): Caution => ({
    id: 'road',
    kind: 'road',
    points: [
      { eastM, northM: 60 },
      { eastM, northM: 160 },
    ],
    closed: false,
  });
  /** Just inside the right edge of the best stroke's pattern. */
  const ROAD_EAST_M = 17;

  test('a flagged stroke is not shown first while another is within 0.1', () => {
    const choice = choiceOn({ ...solution, ground: { ...par3, cautions: [road(ROAD_EAST_M)] } });
    expect(choice.answer.flagged).toHaveLength(0);
    expect(choice.heldBack?.flagged.map((c) => c.id)).toEqual(['road']);
    expect(choice.answer.strokes - (choice.heldBack?.strokes ?? 0)).toBeLessThan(0.1);
    expect(choice.answer.spot.eastM).toBeLessThan(plainCase.answer.spot.eastM);
    expect(choice.reasons.map((r) => r.kind)).toContain('held back');
  });

  test('where every stroke within 0.1 is flagged, the cheapest is shown with its flag', () => {
    const cautions = [-30, -20, -10, 0, 10, 20, 30].map((eastM) => ({ ...road(eastM), id: `road ${eastM}` }));
    const choice = choiceOn({ ...solution, ground: { ...par3, cautions } });
    expect(choice.answer.flagged.length).toBeGreaterThan(0);
    expect(choice.heldBack).toBeUndefined();
    expect(choice.answer.strokes).toBeCloseTo(plainCase.answer.strokes, 6);
  });
});

describe('out of reach of the flag', () => {
  const par4 = referenceHole('t1_symmetric');
  const fair = referencePlayer('player_sym');
  const far = solveHole(par4, fair);
  const choice = choose(far, fair, tee(par4));

  test('the plain line is the middle of the fairway, not the flag', () => {
    expect(choice?.plain?.kind).toBe('fairway');
    expect(choice?.plain?.shown.aim.eastM).toBeCloseTo(0, 0);
    expect(Math.abs((choice?.answer.strokes ?? 0) - 3.8148)).toBeLessThan(0.01);
  });

  test('on a mirror-image hole an unbiased player has as much room left as right', () => {
    for (const arms of choice?.room ?? []) expect(Math.abs((arms.leftM ?? 75) - (arms.rightM ?? 75))).toBeLessThan(1.5);
  });

  test('a stroke that is named is priced beside the answer, never cheaper', () => {
    const option = fair.options.find((o) => o.swing === '7I-full');
    if (option === undefined) throw new Error('no 7-iron');
    const named = choose(far, fair, tee(par4), [{ option, bearingRad: 0 }])?.named[0];
    expect(named?.strokes).toBeGreaterThan(choice?.answer.strokes ?? 0);
    expect(named?.priced.option.swing).toBe('7I-full');
  });
});

test('a swing that would save 0.02 is worth learning, one that would not is left out', () => {
  const nine = player.options.filter((o) => o.swing === '9I-full');
  const middle = ['9I', '8I', '7I'];
  const best = (from: BallState, within?: number) =>
    solution.best(from, (within ?? 0.5) + 1).filter((c) => !middle.includes(c.option.club));
  const without = { ...player, options: player.options.filter((o) => !middle.includes(o.club)) };
  const choice = choose({ ...solution, best }, { ...without, learnable: nine }, tee(par3));
  const [lesson] = choice?.worthLearning ?? [];
  expect(lesson?.shown.priced.option.swing).toBe('9I-full');
  expect(lesson?.savesStrokes).toBeCloseTo((choice?.answer.strokes ?? 0) - (lesson?.shown.strokes ?? 0), 9);
  expect(lesson?.savesStrokes).toBeGreaterThanOrEqual(0.02);
  const spare = choose({ ...solution, best }, { ...without, learnable: without.options.slice(0, 1) }, tee(par3));
  expect(spare?.worthLearning).toEqual([]);
});

test('a full swing within the tie of an in-between one is offered as the plainer choice, and only then', () => {
  const nine = player.options.find((o) => o.swing === '9I-full');
  const pattern = nine?.byLie.tee;
  if (nine === undefined || pattern === undefined) throw new Error('no 9-iron');
  const inBetween = { ...nine, swing: 'held', full: false };
  const best = (): Candidate[] => solution.best(tee(par3), 0).map((c) => ({ ...c, option: inBetween }));
  const wider = (by: number): Option => {
    const parts = pattern.parts.map((p) => ({ ...p, sdAlongM: p.sdAlongM * by, sdAcrossM: p.sdAcrossM * by }));
    return { ...nine, byLie: { ...nine.byLie, tee: { ...pattern, parts } } };
  };
  const offered = (by: number) =>
    choose({ ...solution, best }, { ...player, options: [inBetween, wider(by)] }, tee(par3));
  const near = offered(1.03);
  expect(near?.answer.priced.option.swing).toBe('held');
  expect(near?.simplest?.priced.option.swing).toBe('9I-full');
  expect((near?.simplest?.strokes ?? 9) - (near?.answer.strokes ?? 0)).toBeLessThan(0.02);
  expect(offered(1.5)?.simplest).toBeUndefined();
});

test('no spot may lie on unmapped ground while another choice is there', () => {
  const lost = (p: PlanePoint): boolean => p.eastM > 1;
  const choice = choiceOn({ ...solution, isUnmapped: lost });
  expect(lost(choice.answer.spot)).toBe(false);
  const nowhere = choiceOn({ ...solution, isUnmapped: () => true });
  expect(nowhere.reasons.map((r) => r.kind)).toContain('leans on unmapped');
});
