import { planDocument, planSchema, roundDocument, roundPlan } from '@leeway/contract';
import { CALM, planHole, solveHole } from '@leeway/engine';
import { expect, test } from 'vitest';
import { dayOf } from './openHole.ts';
import { readHole } from './readHole.ts';
import { roundHole } from './roundHole.ts';
import { GROUND, INA, sending } from './testdata/tried.ts';

const turn = { pause: () => Promise.resolve() };
const wind = { ...CALM, speedMps: 5, fromDeg: 200 };
const ask = { ground: GROUND, hole: '5', player: INA, units: 'yd', wind } as const;

test('a hole of a round is the plan of that hole, in one line, and its part makes the round', async () => {
  const { plan, line, part, day } = await roundHole(ask, sending(), turn);
  const read = await readHole({ ...ask }, sending());
  const alone = planDocument([planHole(solveHole(read.ground, read.player, dayOf(wind)), read.player)], {
    player: INA.name,
    units: 'yd',
    scores: true,
  });
  expect(plan).toEqual(alone.holes[0]);
  expect(day).toEqual(alone.day);
  expect(line.split(' · ').length).toBeGreaterThanOrEqual(plan.shots.length);
  expect(line).toMatch(/^5W /);
  const twice = roundDocument([part, part]);
  expect(twice.expectedStrokes).toBeCloseTo(2 * plan.expectedStrokes, 5);
  expect(twice.par).toBe(8);
  const round = roundPlan([{ plan, part }], { player: INA.name, course: 'Tolvane Links' }, day);
  expect(planSchema.safeParse(round).success).toBe(true);
}, 60_000);

test('a pin moves the flag into its part of the green; one off the green is refused in a line', async () => {
  const left = await roundHole(
    { ...ask, pin: { kind: 'zone', zone: { depth: 'front', side: 'left' } } },
    sending(),
    turn,
  );
  const right = await roundHole(
    { ...ask, pin: { kind: 'zone', zone: { depth: 'back', side: 'right' } } },
    sending(),
    turn,
  );
  expect([left.plan.flag.from, right.plan.flag.from]).toEqual(['given', 'given']);
  expect(left.plan.flag.lat).not.toBe(right.plan.flag.lat);
  const off = { ...ask, pin: { kind: 'paces', on: 90, in: 2, side: 'R' } } as const;
  await expect(roundHole(off, sending(), turn)).rejects.toThrow('the flag of hole 5 is not on its green');
}, 60_000);
