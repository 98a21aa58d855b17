import type { PlanDocument } from '@leeway/contract';
import { expect, test } from 'vitest';
import { createApp } from './app.ts';
import { planPage } from './planPage.ts';

const place = { lon: 0, lat: 0, beyondFlagM: -2.7, rightOfFlagM: -5.5 };
const doubt = { se: 0.04, balls: 41, lo80: 3.08, hi80: 3.18 };
const option = { club: '8-iron', swing: 'full' };

const plan = (name: string): PlanDocument => ({
  version: 1,
  day: { windMps: 0, temperatureC: 20, pressureHpa: 1013.25, humidityPercent: 50 },
  player: { name },
  holes: [
    {
      hole: '12',
      par: 3,
      lengthM: 137.16,
      flag: { lon: 0, lat: 0, from: 'pin' },
      expectedStrokes: 3.13,
      doubt,
      solver: { states: 1, options: 1, sweeps: 1, residual: 0, converged: true },
      shots: [
        {
          from: { lon: 0, lat: 0 },
          lie: 'tee',
          toFlagM: 137.16,
          landsM: 128.4,
          finishesM: 131.1,
          todaysNumber: { toLandingM: 128.4, windM: 4.6, slopeM: -0.2, airM: -1.4, lieM: 0, playsM: 131.4 },
          option,
          evidence: 'fitted',
          aim: { ...place, rightOfFlagM: -7.3 },
          spot: place,
          startLine: 'the left edge of the back bunker',
          expectedStrokes: 3.13,
          doubt,
          flagged: [{ kind: 'path', name: 'Coast path', id: 'way/1' }],
          atFlag: { option: { club: '9-iron', swing: 'full' }, expectedStrokes: 3.21, doubt },
          chances: {
            green: 0.66,
            fairway: 0.22,
            rough: 0.08,
            bunker: 0.008,
            penalty: 0.032,
            outOfBounds: 0,
            recovery: 0,
            unmapped: 0,
          },
          room: [],
          proximity: { meanM: 9, medianM: 8 },
          reasons: ['Straight at it 8 in 100 are wet; from the spot 3.'],
          alternatives: [
            {
              option,
              aim: place,
              spot: place,
              expectedStrokes: 3.2,
              doubt,
              costsMore: 0.07,
              why: 'more balls are short',
            },
          ],
        },
      ],
    },
  ],
});

/** The whole page as it has come in the end. */
async function whole(made: Promise<PlanDocument>): Promise<string> {
  let page = '';
  for await (const piece of planPage(made, () => undefined)) page += piece;
  return page;
}

const textOf = (page: string): string => page.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

test('the words stand in the order of a caddie, and the parts of the number add up as printed', async () => {
  expect(textOf(await whole(Promise.resolve(plan('Odile Varga'))))).toMatch(
    new RegExp(
      [
        'Hole 12, par 3, 150 yd',
        'Tee shot: 150 yd to the flag',
        '8-iron, full',
        'Spot 6 yd left of the flag and 3 yd short of it',
        'Start line: the left edge of the back bunker',
        'Start it 2 yd left of the spot',
        'strokes expected 3\\.13',
        'straight at the flag, 9-iron, full 3\\.21',
        'Carries 140, finishes 143 yd',
        'carries 140 wind \\+5 air −2 plays 143',
        'Caution: .*Coast path',
        'green 66 fairway 22 rough 8 sand 1 penalty area 3',
        'Why Straight at it 8 in 100 are wet',
        '8-iron, full, spot .* more balls are short 0\\.07',
        'How sure 41 balls of this club and swing, sure to ±0\\.05, four times in five',
      ].join('.*'),
    ),
  );
});

test('a name from a file cannot write markup', async () => {
  const page = await whole(Promise.resolve(plan('<img src=x onerror=alert(1)>')));
  expect(page).not.toContain('<img src=x');
  expect(page).toContain('&lt;img src=x onerror=alert(1)&gt;');
});

test('the server says what its pages may load, and turns away a foreign Host', async () => {
  const app = createApp(
    () => Promise.resolve(plan('A')),
    () => undefined,
  );
  const page = await app.inject({ url: '/', headers: { host: 'localhost:4310' } });
  expect(page.statusCode).toBe(200);
  expect(page.headers['content-security-policy']).toContain("default-src 'none'");
  expect(page.body).not.toContain('<script');
  const foreign = await app.inject({ url: '/', headers: { host: 'golf.example' } });
  expect([foreign.statusCode, foreign.body]).toEqual([421, 'Leeway answers only on this machine.\n']);
});

test('a plan that takes a while is announced, then follows; one that is there is not announced', async () => {
  const { promise, resolve } = Promise.withResolvers<PlanDocument>();
  const page = planPage(promise, () => undefined);
  expect((await page.next()).value).toContain('<!doctype html>');
  expect((await page.next()).value).toContain('Solving the hole');
  resolve(plan('A'));
  expect((await page.next()).value).toContain('8-iron, full');
  expect((await page.next()).done).toBe(true);
  expect(await whole(Promise.resolve(plan('A')))).not.toContain('Solving the hole');
});

test('a plan that fails is told in one line, without its insides, and what went wrong is put to the terminal', async () => {
  const told: unknown[] = [];
  const failure = new Error('secret detail');
  const app = createApp(
    () => Promise.reject(failure),
    (error) => told.push(error),
  );
  const page = await app.inject({ url: '/', headers: { host: 'localhost' } });
  expect(page.body).toContain('The plan could not be made.');
  expect(page.body).not.toContain('secret');
  expect(told).toEqual([failure]);
});
