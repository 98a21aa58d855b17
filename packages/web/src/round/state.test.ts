import type { RoundPart } from '@leeway/contract';
import { beforeEach, expect, test, vi } from 'vitest';
import { SHELF } from '../testdata/desk.ts';
import type { RoundDesk, RoundHoleAnswer, RoundHoleAsk } from './asks.ts';

// the page's own place and memory: a browser has them
vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => undefined });
const { RoundState } = await import('./state.ts');

const part = (expectedStrokes: number): RoundPart => ({ par: 4, expectedStrokes, nudges: [], balls: 9 });
const answerOf = (hole: string, strokes: number): RoundHoleAnswer =>
  ({
    plan: {
      hole,
      par: 4,
      lengthM: 300,
      expectedStrokes: strokes,
      shots: [{ scores: { parOrBetter: 0.4, doubleOrWorse: 0.1 } }],
    },
    line: `D 238 out · 8i middle`,
    part: part(strokes),
    day: { windMps: 0, temperatureC: 20, pressureHpa: 1013.25, humidityPercent: 50 },
  }) as unknown as RoundHoleAnswer;

const asked: { ask: RoundHoleAsk; answer: (a: RoundHoleAnswer) => void; fail: (e: Error) => void }[] = [];
let closed = 0;
const desk: RoundDesk = { hole: (ask) => new Promise((answer, fail) => asked.push({ ask, answer, fail })) };
const open = () => ({ desk, close: () => void closed++ });
const settled = () => new Promise((then) => setTimeout(then));
const [ground, player] = [SHELF.grounds[0]!, SHELF.players[0]!];

beforeEach(() => {
  asked.length = 0;
  closed = 0;
});

test('lines come hole by hole; the round stands when all are there, and no more when a flag is typed anew', async () => {
  const state = new RoundState(SHELF, { ground, player }, open);
  state.setFlag('2', 'bl');
  const planning = state.plan();
  expect(asked.map(({ ask }) => [ask.hole, ask.pin])).toEqual([
    ['1', undefined],
    ['2', { kind: 'zone', zone: { depth: 'back', side: 'left' } }],
  ]);
  asked[1]?.answer(answerOf('2', 3.2));
  await settled();
  expect(state.rows.value.map(({ line, instead }) => line ?? instead)).toEqual(['waiting', 'D 238 out · 8i middle']);
  expect(state.total.value).toBeUndefined();
  asked[0]?.answer(answerOf('1', 4.3));
  await planning;
  expect([state.total.value?.expectedStrokes, state.planned.value?.running, closed]).toEqual([7.5, false, 1]);
  expect(state.rows.value[0]).toMatchObject({ expectedStrokes: 4.3, scores: { parOrBetter: 0.4 } });
  state.setFlag('1', 'f');
  expect([state.stale.value, state.whole.value, state.total.value]).toEqual([true, false, undefined]);
  state.setFlag('1', 'nowhere');
  expect(state.mayPlan.value).toBe(false);
});

test('a hole that cannot be planned tells why in its line, and the round is not whole', async () => {
  const state = new RoundState(SHELF, { ground, player }, open);
  const planning = state.plan();
  asked[0]?.answer(answerOf('1', 4.3));
  asked[1]?.fail(new Error('the flag of hole 2 is not on its green'));
  await planning;
  expect(state.rows.value[1]?.instead).toBe('the flag of hole 2 is not on its green');
  expect(state.whole.value).toBe(false);
});

test('what a stopped round still answers is passed over', async () => {
  const state = new RoundState(SHELF, { ground, player }, open);
  const first = state.plan();
  const again = state.plan();
  asked[0]?.answer(answerOf('1', 9));
  asked[1]?.answer(answerOf('2', 9));
  await first;
  expect(state.answers.value).toEqual([]);
  asked[2]?.answer(answerOf('1', 4));
  asked[3]?.answer(answerOf('2', 3));
  await again;
  expect(state.total.value?.expectedStrokes).toBe(7);
});
