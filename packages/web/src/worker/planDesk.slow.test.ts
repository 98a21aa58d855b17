import { planSchema } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { CALM, type PlanePoint } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import type { DrawAsk, HoleAnswer, Picture, ShotAnswer } from '../asks.ts';
import { openingShot, sheetOf } from '../opening.ts';
import { planDesk } from './planDesk.ts';
import { GROUND, INA, sending } from './testdata/tried.ts';

const turn: Turn = { passedOver: false, pause: () => Promise.resolve(), move: () => undefined };
const draw = () => Promise.reject(new Error('nothing is drawn here'));
const fresh = () => planDesk({ fetched: sending(), draw, drawIndex: draw });
const ask = { ground: GROUND, hole: '5', player: INA, units: 'yd' } as const;
const holeSchema = planSchema.shape.holes.element;

const beside = (p: PlanePoint, eastM: number, northM: number): PlanePoint => ({
  eastM: p.eastM + eastM,
  northM: p.northM + northM,
});

describe('a turned wind', () => {
  const wind = { ...CALM, speedMps: 6, fromDeg: 200 };

  test('is followed by the shown shot, settled as a hole opened in it, and gone without a trace', async () => {
    const desk = fresh();
    const opened = await desk.open(ask, turn);
    const { flag } = opened;
    const followed = (await desk.moveFlag({ flag, wind, shot: 0, grade: 'following' }, turn)) as ShotAnswer;
    const settled = (await desk.moveFlag({ flag, wind, shot: 0, grade: 'settled' }, turn)) as HoleAnswer;
    const told = ({ plan }: HoleAnswer) => ({ ...plan, solver: undefined });
    expect(told(settled)).toEqual(told(await fresh().open({ ...ask, wind }, turn)));
    const shot = settled.plan.shots[0];
    expect(shot?.todaysNumber.windM).not.toBe(0);
    // what follows the stroke is still played as in calm air
    expect(Math.abs(followed.document.expectedStrokes - (shot?.expectedStrokes ?? 0))).toBeLessThan(0.15);
    const calm = (await desk.moveFlag({ flag, wind: CALM, shot: 0, grade: 'settled' }, turn)) as HoleAnswer;
    expect(told(calm)).toEqual(told(opened));
  });
});

describe('a moved flag', () => {
  test('is followed by the shown shot alone, then settled for the whole plan; the ball stays', async () => {
    const desk = fresh();
    const opened = await desk.open(ask, turn);
    const flag = beside(opened.flag, 4, 3);
    const followed = (await desk.moveFlag({ flag, shot: 1, grade: 'following' }, turn)) as ShotAnswer;
    expect([followed.shot, followed.flag]).toEqual([1, flag]);
    const settled = (await desk.moveFlag({ flag, shot: 1, grade: 'settled' }, turn)) as HoleAnswer;
    expect(settled.flag).toEqual(flag);
    expect(settled.shots.slice(0, 2).map((s) => s.ball)).toEqual(opened.shots.slice(0, 2).map((s) => s.ball));
    expect(holeSchema.parse(settled.plan)).toEqual(settled.plan);
    const shot = settled.plan.shots[1];
    // less than what is called a tie
    expect(Math.abs(followed.document.expectedStrokes - (shot?.expectedStrokes ?? 0))).toBeLessThan(0.02);
    expect(followed.document.from).toEqual(shot?.from);
    expect(settled.plan.shots[1]?.toFlagM).not.toBe(opened.plan.shots[1]?.toFlagM);
  });

  test('moved and moved back gives the plan that was', async () => {
    const desk = fresh();
    const opened = await desk.open(ask, turn);
    await desk.moveFlag({ flag: beside(opened.flag, -5, 2), shot: 0, grade: 'following' }, turn);
    const back = (await desk.moveFlag({ flag: opened.flag, shot: 0, grade: 'settled' }, turn)) as HoleAnswer;
    expect(back.plan.expectedStrokes).toBeCloseTo(opened.plan.expectedStrokes, 2);
    expect(back.plan.shots.map((s) => s.option)).toEqual(opened.plan.shots.map((s) => s.option));
  });
});

test('the sheet that a hole is opened with is drawn beforehand, given once, and not for another sheet or a flag that has moved', async () => {
  const drawn: DrawAsk[] = [];
  const closed: DrawAsk[] = [];
  const paint = (_: unknown, wanted: DrawAsk): Promise<Picture> => {
    drawn.push(wanted);
    return Promise.resolve({ bitmap: { close: () => void closed.push(wanted) } } as unknown as Picture);
  };
  const desk = planDesk({ fetched: sending(), draw: paint, drawIndex: paint });
  const { plan, flag } = await desk.open(ask, turn);
  const format = { widthPx: 300, heightPx: 400, pixelRatio: 1, light: 'paper', units: 'yd', phone: true } as const;
  const first = sheetOf(plan, openingShot(plan, true), format);
  await desk.foresee({ ...format, atFlag: true }, turn);
  expect(drawn).toEqual([first]);
  await desk.draw(first, turn);
  expect(drawn).toHaveLength(1);
  await desk.draw(first, turn);
  expect(drawn).toHaveLength(2);
  await desk.foresee({ ...format, atFlag: true }, turn);
  await desk.draw({ ...first, light: 'sun' }, turn);
  expect(drawn).toHaveLength(4);
  expect(closed).toEqual([first]);
  await desk.foresee({ ...format, atFlag: true }, turn);
  await desk.moveFlag({ flag: beside(flag, 0.5, 0), shot: first.shot ?? 0, grade: 'following' }, turn);
  await desk.draw(first, turn);
  expect(drawn).toHaveLength(6);
}, 60_000);

test('what can be played is listed, a club of the user’s own is priced where it finishes, and the plan is given to be kept', async () => {
  const desk = fresh();
  const { flag, shots, plan } = await desk.open(ask, turn);
  const shot = shots.length - 1;
  const options = await desk.options({ shot }, turn);
  expect(options).toContainEqual({ club: '7-iron', swing: 'full' });
  const spot = beside(flag, -4, 2);
  const free = await desk.spot({ shot, spot }, turn);
  for (const option of options ?? []) {
    const own = await desk.spot({ shot, spot, option }, turn);
    expect(own?.option).toEqual(option);
    expect(own?.costsMore).toBeGreaterThan(-0.003);
    if (JSON.stringify(option) === JSON.stringify(free?.option)) expect(own).toEqual(free);
  }
  await expect(desk.spot({ shot, spot, option: { club: '3-iron', swing: 'full' } }, turn)).rejects.toThrow('3-iron');
  const scores = await desk.scores({ shot: 0 }, turn);
  if (scores === undefined || scores === 'unknown') throw new Error('no scores');
  expect(scores.others).toHaveLength(plan.shots[0]?.alternatives.length ?? -1);
  for (const { parOrBetter, doubleOrWorse } of [scores.choice, ...scores.others])
    expect(parOrBetter + doubleOrWorse).toBeLessThanOrEqual(1);
  const kept = await desk.keep({ place: flag }, turn);
  expect(kept?.plan.holes[0]?.shots[0]?.scores?.parOrBetter).toBeCloseTo(scores.choice.parOrBetter, 3);
  expect(planSchema.parse(kept?.plan).holes[0]).toMatchObject({ hole: '5', expectedStrokes: plan.expectedStrokes });
  expect(kept?.plan.holes[0]?.shots[0]?.scores?.parOrBetter).toBeGreaterThan(0);
  const { lon, lat } = plan.flag;
  expect([kept?.place?.lon, kept?.place?.lat]).toEqual([expect.closeTo(lon, 8), expect.closeTo(lat, 8)]);
}, 60_000);
