import type { PlanDocument, ShotDocument } from '@leeway/contract';
import { expect, test } from 'vitest';
import { planNote, shotNote } from './caddie.ts';

const place = { lon: 0, lat: 0, beyondFlagM: -3, rightOfFlagM: 8 };
const doubt = { se: 0.03, balls: 24, lo80: 3.08, hi80: 3.16 };
const stroke = { option: { club: '9I', swing: 'full' }, aim: place, spot: place, expectedStrokes: 3.16, doubt };
const shot: ShotDocument = {
  from: { lon: 0, lat: 0 },
  lie: 'rough',
  toFlagM: 143,
  landsM: 134.4,
  finishesM: 136,
  todaysNumber: { toLandingM: 134.4, windM: 0, slopeM: 0, airM: 0, lieM: 9.4, playsM: 143.8 },
  option: { club: '8I', swing: 'full' },
  evidence: 'fitted',
  aim: place,
  spot: place,
  startLine: 'the right edge of the back bunker',
  expectedStrokes: 3.12,
  doubt,
  atFlag: { option: { club: '8I', swing: 'full' }, expectedStrokes: 3.21, doubt },
  chances: {
    green: 0.6,
    fairway: 0.2,
    rough: 0.167,
    bunker: 0.03,
    penalty: 0.002,
    outOfBounds: 0.0001,
    recovery: 0,
    unmapped: 0,
  },
  room: [
    { more: 0.1, leftM: 16, rightM: 9, shortM: null, longM: 12 },
    { more: 0.25, leftM: 19, rightM: 9, shortM: null, longM: null },
  ],
  proximity: { meanM: 9, medianM: 8 },
  reasons: ['A reason.'],
  alternatives: [
    { ...stroke, costsMore: 0.04, why: '12 in 100 finish in the pond; from the spot 3' },
    { ...stroke, option: { club: 'PW', swing: 'full' }, costsMore: 0.012, why: 'never told' },
  ],
};
const note = (over: Partial<ShotDocument> = {}, units: 'yd' | 'm' = 'm'): string =>
  shotNote({ ...shot, ...over }, units).join('\n');

test('the words come in their order: what, where, start, price, distances, chances, room, why, else, how sure', () => {
  expect(note().split('\n')).toEqual([
    'This shot: 143 m to the flag, from the rough.',
    '  8-iron, full. Spot 8 m right of the flag and 3 m short of it.',
    '  Start line: the right edge of the back bunker.',
    '  3.12 strokes; straight at the flag with the 8-iron, full 3.21.',
    '  Lands 134, finishes 136 m. Today lands 134, lie +10, plays 144.',
    '  Of 100 balls: green 60, fairway 20, rough 16, sand 3, penalty area 1.',
    '  Room before a ball costs 0.10 · 0.25 more: left 16 · 19, right 9, short free, long 12 · free m.',
    '  A reason.',
    '  Else 9-iron, full, 8 m right and 3 m short: 3.16, costs 0.04 more: 12 in 100 finish in the pond; from the spot 3.',
    '  Else PW, full, 8 m right and 3 m short: 3.16, a tie.',
    '  How sure: 24 balls of this club and swing; sure to ±0.04, four times in five.',
  ]);
});

test('the parts of today’s number add up as printed to what it plays, though each would round otherwise', () => {
  expect(shot.todaysNumber.lieM.toFixed(0)).toBe('9');
  expect(shot.todaysNumber.playsM.toFixed(0)).toBe('144');
  expect(note()).toContain('lands 134, lie +10, plays 144');
});

test('the wind’s part stands with what it may be', () => {
  const todaysNumber = { ...shot.todaysNumber, windM: 12, playsM: 155.8, doubt: { wind: { lo80: 7.8, hi80: 16.2 } } };
  expect(note({ todaysNumber })).toContain('lands 134, wind +12 (+8 to +16), lie +10, plays 156');
});

test('yards are the same ground in other units', () => {
  expect(note({}, 'yd')).toContain('156 yd to the flag');
});

test('out of reach the plain line is the fairway, and the note says what is left', () => {
  const { atFlag, ...rest } = shot;
  const text = shotNote(
    { ...rest, ...(atFlag && { middleOfFairway: atFlag }), spot: { ...place, beyondFlagM: -131 } },
    'm',
  ).join('\n');
  expect(text).toContain('down the middle of the fairway with the 8-iron, full 3.21');
  expect(text).toContain('leaves 131 m');
  expect(text).not.toContain('straight at the flag');
  expect(text).toContain('Spot 12 m out, 8 m right of the flag line.');
  expect(text).toContain('Else 9-iron, full, 140 m out, 8 m right:');
});

test('a flagged stroke carries a caution, and a bias how to start the ball', () => {
  expect(
    note({
      flagged: [
        { kind: 'tee', id: 'way/1' },
        { kind: 'road', id: 'way/2', name: 'Mill Lane' },
      ],
    }),
  ).toContain("Caution: balls of this pattern reach another hole's tee, Mill Lane.");
  expect(note({ aim: { ...place, rightOfFlagM: 5 } })).toContain('Start it 3 m left of the spot');
});

test('named strokes, the plainer choice and what is worth learning are told', () => {
  const text = note({
    simplest: { ...stroke, option: { club: '7I', swing: 'full' } },
    named: [{ ...stroke, costsMore: 0.3, chances: shot.chances }],
    worthLearning: [{ ...stroke, option: { club: '8I', swing: 'three-quarter' }, savesStrokes: 0.05 }],
  });
  expect(text).toContain('Plainer, and a tie: 7-iron, full');
  expect(text).toContain('As asked, 9-iron, full, 8 m right');
  expect(text).toContain('Worth learning: 8-iron, three-quarter, 8 m right and 3 m short would save 0.05 here.');
});

test('a round has its total, and the map’s credit stands at the end', () => {
  const hole: PlanDocument['holes'][number] = {
    hole: '7',
    par: 4,
    lengthM: 348,
    flag: { lon: 0, lat: 0, from: 'green centre' },
    expectedStrokes: 4.321,
    doubt,
    solver: { states: 1, options: 1, sweeps: 1, residual: 0, converged: true },
    shots: [{ ...shot, lie: 'tee' }],
  };
  const text = planNote(
    {
      version: 1,
      course: 'Made Links',
      attribution: 'Map by its makers',
      day: { windMps: 0, temperatureC: 20, pressureHpa: 1013.25, humidityPercent: 50 },
      player: { name: 'Wren' },
      round: { par: 8, expectedStrokes: 8.642, doubt: { ...doubt, se: 0 } },
      holes: [hole, { ...hole, hole: '8' }],
    },
    'm',
  );
  expect(text).toContain('2 holes, par 8: 8.64 strokes.');
  expect(text).toContain('Hole 7, par 4, 348 m: 4.32 strokes');
  expect(text).toContain('No flag is mapped');
  expect(text).toContain('Tee shot: 143 m to the flag.');
  expect(text.trimEnd().split('\n').at(-1)).toBe('Map by its makers');
});
