import { CALM, type PlanePoint } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import type { FlagAsk, ShotAnswer } from '../asks.ts';
import { HandClock, holeAnswer, pictureOf, SHELF, SlowDesk } from '../testdata/desk.ts';
import { shotOf } from '../testdata/shot.ts';
import { openOn } from './holes.ts';
import { PlanState } from './plan.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const ROOM = { widthPx: 400, heightPx: 420, pixelRatio: 1, phone: false };
const ahead = (flag: PlanePoint): ShotAnswer => ({
  shot: 1,
  document: { ...shotOf(), expectedStrokes: 3.4 },
  flag,
  spot: at(1, 301),
});

async function opened(atFlag = true, answer = holeAnswer()) {
  const [desk, clock] = [new SlowDesk(), new HandClock()];
  const open = openOn(SHELF, {});
  if (open === undefined) throw new Error('an empty shelf');
  const state = new PlanState(desk, SHELF, clock, { ...open, units: 'yd', light: 'paper', atFlag });
  await desk.of('open')[0]?.answer(answer);
  state.sheets.room.value = ROOM;
  await desk.of('draw').at(-1)?.answer(pictureOf());
  return { desk, clock, state };
}

describe('a dragged flag', () => {
  it('asks once a frame at most, and moves at once', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(1, 300));
    state.flagTo(at(2, 301));
    expect(state.flag.value).toEqual(at(2, 301));
    expect(desk.of('moveFlag')).toHaveLength(0);
    clock.paint();
    expect(desk.of('moveFlag').map(({ ask }) => ask)).toEqual([
      { flag: at(2, 301), wind: CALM, shot: 1, grade: 'following' },
    ]);
  });

  it('has the newest place before the desk at once, and shows what is answered in its order', async () => {
    const { desk, clock, state } = await opened();
    for (const east of [1, 2, 3]) {
      state.flagTo(at(east, 300));
      clock.paint();
    }
    expect(desk.of('moveFlag').map(({ ask }) => (ask as FlagAsk).flag.eastM)).toEqual([1, 2, 3]);
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    expect(state.shot.value?.expectedStrokes).toBe(3.4);
    expect(state.answered.value).toBe('following');
    expect(state.flag.value).toEqual(at(3, 300));
    await desk.of('moveFlag')[1]?.answer(undefined);
    expect(state.answeredFor.value).toEqual(at(1, 300));
    await desk.of('moveFlag')[2]?.answer(ahead(at(3, 300)));
    expect(state.answeredFor.value).toEqual(at(3, 300));
  });

  it('is answered in full only after the quick answer', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(1, 300));
    clock.paint();
    clock.pass(200);
    expect(desk.of('moveFlag')).toHaveLength(1);
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    expect(desk.of('moveFlag').map(({ ask }) => (ask as FlagAsk).grade)).toEqual(['following', 'settled']);
  });

  it('settles 150 ms after the last move, and only then speaks', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(1, 300));
    clock.paint();
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    clock.pass(149);
    state.flagTo(at(2, 300));
    clock.paint();
    await desk.of('moveFlag')[1]?.answer(ahead(at(2, 300)));
    clock.pass(149);
    expect(desk.of('moveFlag')).toHaveLength(2);
    expect(state.said.value).toBe('');
    clock.pass(1);
    expect(desk.of('moveFlag')[2]?.ask).toMatchObject({ grade: 'settled', flag: at(2, 300) });
    await desk.of('moveFlag')[2]?.answer(holeAnswer(at(2, 300)));
    expect(state.answered.value).toBe('settled');
    expect(state.said.value).toContain('8-iron, full');
  });

  it('stays on the green, and can be had back', async () => {
    const { clock, state } = await opened();
    state.flagTo(at(50, 300));
    expect(state.flag.value?.eastM).toBeCloseTo(9.7);
    expect(state.flagMoved.value).toBe(true);
    state.flagToStart();
    clock.paint();
    expect(state.flag.value).toEqual(at(0, 300));
    expect(state.flagMoved.value).toBe(false);
  });

  it('goes back to where the plan has it when the desk fails', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(3, 300));
    clock.paint();
    await desk.of('moveFlag')[0]?.fail('the solver gave up');
    expect(state.flag.value).toEqual(at(0, 300));
    expect(state.fault.value).toBe('the solver gave up');
    expect(state.plan.value?.expectedStrokes).toBe(4.2);
  });
});

describe('a wind that is turned', () => {
  it('is shown at once, followed by the choice, settled when it has lain still, and then spoken of', async () => {
    const { desk, clock, state } = await opened();
    state.windTo({ fromDeg: 240, speedMps: 5 });
    state.windTo({ fromDeg: 245 });
    const wind = { ...CALM, fromDeg: 245, speedMps: 5 };
    expect(state.wind.value).toEqual(wind);
    expect(state.lags.value).toBe(true);
    clock.paint();
    expect(desk.of('moveFlag').map(({ ask }) => ask)).toEqual([
      { flag: at(0, 300), wind, shot: 1, grade: 'following' },
    ]);
    await desk.of('moveFlag')[0]?.answer(ahead(at(0, 300)));
    expect(state.lags.value).toBe(false);
    expect(state.shot.value?.expectedStrokes).toBe(3.4);
    clock.pass(150);
    expect(desk.of('moveFlag')[1]?.ask).toMatchObject({ wind, grade: 'settled' });
    await desk.of('moveFlag')[1]?.answer(holeAnswer());
    expect(state.said.value).toContain('8-iron, full');
  });

  it('stays for the next hole, and is drawn with whence it is known', async () => {
    const { desk, clock, state } = await opened();
    state.windTo({ speedMps: 4, heightM: 2 });
    clock.paint();
    await desk.of('moveFlag')[0]?.answer(ahead(at(0, 300)));
    expect(desk.of('draw').at(-1)?.ask).toMatchObject({ wind: { speedMps: 4, known: 'felt' } });
    state.turnTo({});
    expect(desk.of('open').at(-1)?.ask).toMatchObject({ wind: { speedMps: 4, heightM: 2 } });
  });
});

describe('a spot of one’s own', () => {
  it('is priced, moves with the flag’s answers, and can be given up', async () => {
    const { desk, clock, state } = await opened();
    const cost = {
      spot: at(4, 296),
      option: { club: '8-iron', swing: 'full' },
      expectedStrokes: 3.61,
      costsMore: 0.06,
    };
    state.spotTo(at(4, 296));
    clock.paint();
    await desk.of('spot')[0]?.answer(cost);
    expect(state.own.cost.value?.costsMore).toBe(0.06);
    state.flagTo(at(1, 300));
    clock.paint();
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    expect(desk.of('spot')).toHaveLength(2);
    state.own.giveUp();
    await desk.of('spot')[1]?.answer(cost);
    expect([state.own.at.value, state.own.cost.value]).toEqual([undefined, undefined]);
  });

  it('goes when another shot is shown', async () => {
    const { state } = await opened();
    state.spotTo(at(4, 296));
    state.showShot(0);
    expect(state.own.at.value).toBeUndefined();
  });
});

describe('opening', () => {
  it('begins with the shot that plays to the flag for whoever is new, else with the tee shot', async () => {
    expect((await opened(true)).state.index.value).toBe(1);
    expect((await opened(false)).state.index.value).toBe(0);
  });

  it('passes over the answers of a hole that was left', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(1, 300));
    clock.paint();
    state.turnTo({ hole: '2' });
    expect(state.shot.value).toBeUndefined();
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    expect(state.shot.value).toBeUndefined();
    expect(state.plan.value).toBeUndefined();
  });

  it('keeps a moved flag when the units change', async () => {
    const { desk, clock, state } = await opened();
    state.flagTo(at(1, 300));
    clock.paint();
    await desk.of('moveFlag')[0]?.answer(ahead(at(1, 300)));
    state.setUnits('m');
    expect(desk.of('open')[1]?.ask).toMatchObject({ units: 'm' });
    await desk.of('open')[1]?.answer(holeAnswer());
    clock.paint();
    expect(state.flag.value).toEqual(at(1, 300));
    expect(desk.of('moveFlag').at(-1)?.ask).toMatchObject({ flag: at(1, 300) });
  });

  it('asks in full for what was worked out beforehand, once its sheet is there', async () => {
    const { desk, clock, state } = await opened(true, { ...holeAnswer(), prepared: true });
    expect(state.answered.value).toBe('prepared');
    clock.pass(300);
    expect(desk.of('moveFlag').map(({ ask }) => ask)).toEqual([
      { flag: at(0, 300), wind: CALM, shot: 1, grade: 'settled' },
    ]);
    await desk.of('moveFlag')[0]?.answer(holeAnswer());
    expect([state.answered.value, state.said.value]).toEqual(['settled', '']);
  });

  it('tells a fault when the hole cannot be opened', async () => {
    const desk = new SlowDesk();
    const open = openOn(SHELF, { player: 'q', hole: '9' });
    if (open === undefined) throw new Error('an empty shelf');
    expect([open.player.name, open.hole]).toEqual(['Quin', '1']);
    const state = new PlanState(desk, SHELF, new HandClock(), { ...open, units: 'yd', light: 'paper', atFlag: false });
    await desk.of('open')[0]?.fail('there is no plan');
    expect(state.fault.value).toBe('there is no plan');
  });
});

describe('the sheet', () => {
  it('is drawn anew for a shot, a light and an answer; the whole hole for a tee shot that leaves the flag', async () => {
    const { desk, state } = await opened();
    const drawn = desk.of('draw').length;
    state.light.value = 'sun';
    expect(desk.of('draw').at(-1)?.ask).toMatchObject({ shot: 1, light: 'sun' });
    expect(desk.of('draw')).toHaveLength(drawn + 1);
    state.showShot(0);
    expect(state.drawing.value).toBe(true);
    await desk.of('draw').at(-1)?.answer(pictureOf());
    await desk.of('draw').at(-1)?.answer(pictureOf());
    expect(desk.of('draw').at(-1)?.ask).not.toHaveProperty('shot');
    expect(state.drawing.value).toBe(false);
  });

  it('goes to a sheet with the flag on it when the flag is to be placed', async () => {
    const { desk, state } = await opened(false);
    state.sheets.room.value = { ...ROOM, heightPx: 90 };
    await desk.of('draw').at(-1)?.answer(pictureOf());
    state.take('flag');
    expect([state.index.value, state.placing.value]).toEqual([1, 'flag']);
  });
});

describe('choosing first', () => {
  it('draws and says nothing of the answer until it is asked for, then prices what was chosen', async () => {
    const { desk, clock, state } = await opened();
    state.hideAnswers(true);
    expect(state.sheets.picture.value).toBeUndefined();
    expect(desk.of('draw').at(-1)?.ask).toMatchObject({ unchosen: 1 });
    expect(desk.of('draw').at(-1)?.ask).not.toHaveProperty('shot');
    expect(state.spotFrom.value).toEqual(state.flag.value);
    const option = { club: '5-iron', swing: 'full' };
    state.own.option.value = option;
    state.spotTo(at(4, 296));
    clock.paint();
    clock.pass(500);
    expect(desk.of('spot')).toHaveLength(0);
    expect(state.said.value).toBe('');

    state.showAnswer();
    await desk.of('draw').at(-1)?.answer(pictureOf());
    expect(desk.of('draw').at(-1)?.ask).toMatchObject({ shot: 1 });
    expect(desk.of('spot').map(({ ask }) => ask)).toEqual([{ shot: 1, spot: at(4, 296), option }]);
    await desk.of('spot')[0]?.answer({ spot: at(4, 290), option, expectedStrokes: 3.61, costsMore: 0.06 });
    expect([state.spot.value, state.own.cost.value?.costsMore]).toEqual([at(-2, 298), 0.06]);
    expect(state.said.value).toContain('0.06 more');
  });

  it('hides the answer again for another shot, and forgets what was chosen', async () => {
    const { state } = await opened();
    state.hideAnswers(true);
    state.own.option.value = { club: '5-iron', swing: 'full' };
    state.spotTo(at(4, 296));
    state.showAnswer();
    expect(state.first.hidden.value).toBe(false);
    state.showShot(0);
    expect([state.first.hidden.value, state.own.at.value, state.own.option.value]).toEqual([
      true,
      undefined,
      undefined,
    ]);
    // from the tee a spot is taken 200 m up the line to the flag
    expect(state.spotFrom.value).toEqual(at(0, 200));
    state.hideAnswers(false);
    expect(state.spotFrom.value).toEqual(at(5, 180));
  });
});
