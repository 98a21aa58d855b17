import { planFrom, planHole, solveHole } from '@leeway/engine';
import { referenceHole, referencePlayer } from '@leeway/engine/testdata';
import { describe, expect, test } from 'vitest';
import { planJsonSchema, planSchema, shotJsonSchema, shotSchema } from './plan.ts';
import { planDocument, shotDocument } from './planDocument.ts';

const player = referencePlayer('player');
const ground = referenceHole('h1_par3_125');
const solution = solveHole(ground, player);
const heading = { player: player.name, units: 'yd', attribution: 'Map by those who drew it' } as const;
const document = planDocument([planHole(solution, player)], heading);
const [hole] = document.holes;
const [first] = hole?.shots ?? [];
if (hole === undefined || first === undefined) throw new Error('no plan');

test('the document is what its schema says, also after a turn through JSON', () => {
  expect(planSchema.parse(document)).toEqual(document);
  expect(planSchema.parse(JSON.parse(JSON.stringify(document)))).toEqual(document);
});

test('the schemas are published as JSON Schema', () => {
  expect(planJsonSchema()).toMatchObject({ $schema: expect.stringContaining('2020-12'), type: 'object' });
  expect(shotJsonSchema()).toMatchObject({ required: expect.arrayContaining(['option', 'aim', 'spot', 'chances']) });
});

test('the same inputs give the same bytes', () => {
  const again = planDocument([planHole(solveHole(ground, player), player)], heading);
  expect(JSON.stringify(again)).toBe(JSON.stringify(document));
});

test('one hole has no round; two have their sums', () => {
  expect(document.round).toBeUndefined();
  const plan = planHole(solution, player);
  const { round } = planDocument([plan, plan], heading);
  expect(round?.par).toBe(6);
  expect(round?.expectedStrokes).toBeCloseTo(2 * hole.expectedStrokes, 5);
});

test('a clock is read only when asked for', () => {
  expect(hole.solver.milliseconds).toBeUndefined();
  const timed = planDocument([planHole(solution, player)], heading, [12.34]);
  expect(timed.holes[0]?.solver.milliseconds).toBe(12.3);
});

describe('a shot', () => {
  test('spells club and swing as the player does', () => {
    expect(first.option).toEqual({ club: '9I', swing: '9I-full' });
  });

  test('gives places with nine decimals in the frame ball -> flag', () => {
    const { lon, lat, beyondFlagM, rightOfFlagM } = first.spot;
    expect(Math.hypot(beyondFlagM, rightOfFlagM)).toBeLessThan(8);
    const spot = ground.frame.toPlane({ lon, lat });
    const away = Math.hypot(spot.eastM - ground.flag.eastM, spot.northM - ground.flag.northM);
    expect(away).toBeCloseTo(Math.hypot(beyondFlagM, rightOfFlagM), 2);
  });

  test('its chances sum to 1 and its number adds up', () => {
    expect(Object.values(first.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 6);
    const { toLandingM, windM, slopeM, airM, lieM, playsM } = first.todaysNumber;
    expect(toLandingM + windM + slopeM + airM + lieM).toBeCloseTo(playsM, 2);
  });

  test('from the rough, today’s number adds what the lie takes', () => {
    const from = { at: { eastM: -20, northM: 60 }, lie: 'rough' } as const;
    const [shot] = planFrom(solution, player, from).shots;
    if (shot === undefined) throw new Error('no shot');
    const rough = shotDocument(shot, ground, 'm');
    expect(shotSchema.parse(rough)).toEqual(rough);
    expect(rough.todaysNumber.lieM).toBeGreaterThan(1);
    expect(rough.todaysNumber.playsM).toBeGreaterThan(rough.landsM);
  });

  test('every figure of expected strokes stands beside its doubt', () => {
    for (const s of [first, first.atFlag, ...first.alternatives]) {
      expect(s?.doubt).toMatchObject({ se: 0, lo80: s?.expectedStrokes, hi80: s?.expectedStrokes });
    }
  });
});
