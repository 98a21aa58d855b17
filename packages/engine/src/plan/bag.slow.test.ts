import { describe, expect, it } from 'vitest';
import { solveHole } from '../value/solve.ts';
import { area, box, hole, option, part, player, round } from '../value/testdata/toy.ts';
import { planBag } from './bag.ts';
import { planTees } from './tees.ts';

const meadow = area('fairway', box(-80, -30, 80, 400));
const holeOf = (lengthM: number) => hole([0, lengthM], [meadow, area('green', round(0, lengthM, 10))]);
const clubs = (...names: readonly (readonly [string, number])[]) =>
  names.map(([name, carryM]) => option(name, [part(1, carryM, 2)]));

describe('a bag', () => {
  // 100 and 150 m each reach one green; a second 100 m club and one of 40 m do nothing for either
  const grounds = [holeOf(100), holeOf(150)];
  const own = player(clubs(['5-iron', 150], ['7-iron', 100], ['8-iron', 100.2], ['sand wedge', 40]), 2);
  const bag = planBag(grounds, own);

  it('names the club that earns nothing, and keeps those that do', () => {
    const worth = new Map(bag.worth.map((w) => [w.club, w]));
    expect(worth.get('sand wedge')?.earns).toBe(false);
    expect(worth.get('5-iron')?.earns).toBe(true);
    // one of the twins stays, and then earns its place
    expect(bag.carry).toContain('5-iron');
    expect(bag.carry.filter((c) => c === '7-iron' || c === '8-iron')).toHaveLength(1);
    expect([...bag.carry, ...bag.leave].toSorted()).toEqual(['5-iron', '7-iron', '8-iron', 'sand wedge']);
  });

  it('counts as much as the holes solved anew say', () => {
    const kept = { ...own, options: own.options.filter((o) => bag.carry.includes(o.club)) };
    const cost = grounds.reduce(
      (sum, g) => sum + solveHole(g, kept).best({ at: g.ball, lie: 'tee' }, 0)[0]!.strokes,
      0,
    );
    expect(Math.abs(bag.carriedStrokes - cost)).toBeLessThan(1e-9);
    expect(bag.carriedStrokes).toBeLessThan(bag.strokes + 0.04);
  });
});

describe('tees', () => {
  it('that suit are the longest from which half of the holes come within a stroke of par', () => {
    const own = player(clubs(['3-wood', 150], ['7-iron', 100], ['sand wedge', 50]), 1.9);
    const sets = [
      { name: 'back', holes: [380, 380, 150].map(holeOf) },
      { name: 'middle', holes: [300, 300, 100].map(holeOf) },
      { name: 'front', holes: [150, 250, 100].map(holeOf) },
    ].map(({ name, holes }) => ({ name, holes: holes.map((h) => ({ ...h, par: 3 })) }));
    const { tees, suits } = planTees(sets, own);
    expect(tees.map((t) => t.name)).toEqual(['back', 'middle', 'front']);
    // 380 m takes three strokes and two putts, 300 m two and two (1.9 putts): within a stroke of this par
    expect(suits).toBe('middle');
    expect(planTees(sets.slice(0, 1), own).suits).toBe('back');
  });
});
