import { type HoleNumbers, holeNumbersSchema } from '@leeway/contract';
import { bearingRad, distanceM, type HoleGround, lengthM, offsetOf, insidePolygon, RAD_PER_DEG } from '@leeway/engine';
import { expect, test } from 'vitest';
import { courseByNumbers, numbersFaults, numbersIn } from './holeByNumbers.ts';
import { readGround } from './readGround.ts';

const HOLE: HoleNumbers = {
  hole: '7',
  name: 'The Elbow',
  lengthM: 350,
  bearingDeg: 40,
  turn: { atM: 210, byDeg: 35 },
  green: { depthM: 28, widthM: 20, turnedDeg: 20 },
  hazards: [
    { kind: 'sand', reachM: 190, carryM: 205, side: 'right', offM: 12 },
    { kind: 'water', reachM: 300, carryM: 312, side: 'across', name: 'The Rill' },
    { kind: 'out', reachM: 0, carryM: 150, side: 'left', offM: 40 },
    { kind: 'trees', reachM: 230, carryM: 280, side: 'left', offM: 25 },
  ],
};

function read(holes: readonly HoleNumbers[]): readonly HoleGround[] {
  const { value, faults } = readGround(courseByNumbers(holes), 'typed');
  expect(faults.filter(({ level }) => level !== 'note')).toEqual([]);
  return value?.holes ?? [];
}

const areasOf = (hole: HoleGround, surface: string) => hole.areas.filter((area) => area.surface === surface);

test('a hole by numbers reads as a hole of that length, turn, bearing and par', () => {
  const [hole] = read([HOLE]);
  if (hole === undefined) throw new Error('no hole');
  expect([hole.hole, hole.name, hole.par, hole.parGuessed]).toEqual(['7', 'The Elbow', 4, true]);
  expect(lengthM(hole.line)).toBeCloseTo(350, 2);
  const [tee, corner, end] = hole.line;
  if (tee === undefined || corner === undefined || end === undefined) throw new Error('no turn');
  expect(distanceM(tee, corner)).toBeCloseTo(210, 2);
  expect(bearingRad(tee, corner) / RAD_PER_DEG).toBeCloseTo(40, 3);
  expect(bearingRad(corner, end) / RAD_PER_DEG).toBeCloseTo(75, 3);
  expect(distanceM(hole.flag, end)).toBeLessThan(0.5);
});

test('the green has the depth, the width and the turn that were typed', () => {
  const [hole] = read([{ ...HOLE, turn: undefined, hazards: [] } as unknown as HoleNumbers]);
  const [green] = hole === undefined ? [] : areasOf(hole, 'green');
  if (hole === undefined || green === undefined) throw new Error('no green');
  const across = green.polygon.outer.map((p) => offsetOf(p, hole.flag, (40 + 20) * RAD_PER_DEG));
  const reach = (of: (o: (typeof across)[number]) => number) =>
    Math.max(...across.map(of)) - Math.min(...across.map(of));
  expect(reach((o) => o.alongM)).toBeCloseTo(28, 1);
  expect(reach((o) => o.acrossM)).toBeCloseTo(20, 1);
});

test('a hazard begins at its reach, ends at its carry, and its nearer edge is as far off as was typed', () => {
  const [hole] = read([HOLE]);
  const [sand] = hole === undefined ? [] : areasOf(hole, 'bunker');
  if (hole === undefined || sand === undefined) throw new Error('no sand');
  const seen = sand.polygon.outer.map((p) => offsetOf(p, hole.ball, 40 * RAD_PER_DEG));
  expect(Math.min(...seen.map((o) => o.alongM))).toBeCloseTo(190, 1);
  expect(Math.max(...seen.map((o) => o.alongM))).toBeCloseTo(205, 1);
  expect(Math.min(...seen.map((o) => o.acrossM))).toBeCloseTo(12, 1);
});

test('water across the line lies on it, is yellow and has its name; out of bounds and trees are there', () => {
  const [hole] = read([HOLE]);
  if (hole === undefined) throw new Error('no hole');
  const [water] = areasOf(hole, 'penalty');
  expect([water?.name, water?.red]).toEqual(['The Rill', false]);
  const corner = hole.line[1];
  if (water === undefined || corner === undefined) throw new Error('no water');
  const [a, b] = [306 - 210, 75 * RAD_PER_DEG];
  const on = { eastM: corner.eastM + a * Math.sin(b), northM: corner.northM + a * Math.cos(b) };
  expect(insidePolygon(on, water.polygon)).toBe(true);
  expect(areasOf(hole, 'out')).toHaveLength(1);
  expect(areasOf(hole, 'recovery')).toHaveLength(1);
});

test('many holes stand apart, each with its own ground alone', () => {
  const holes = ['1', '2', '3'].map((hole) => ({ ...HOLE, hole }));
  const alone = read([HOLE])[0]?.areas.length;
  expect(read(holes).map((hole) => hole.areas.length)).toEqual([alone, alone, alone]);
});

test('every feature is marked as typed, and the numbers come back as they were given', () => {
  const text = courseByNumbers([HOLE]);
  const { features } = JSON.parse(text) as { features: { properties: { source: string } }[] };
  expect(features.every(({ properties }) => properties.source === 'typed')).toBe(true);
  expect(numbersIn(text)?.map((n) => holeNumbersSchema.parse(n))).toEqual([HOLE]);
  expect(numbersIn('{"type":"FeatureCollection","features":[]}')).toBeUndefined();
  expect(numbersIn('<osm/>')).toBeUndefined();
});

test.each([
  [
    'a carry short of its reach',
    { hazards: [{ kind: 'sand', reachM: 200, carryM: 190, side: 'left' }] },
    'hole 7: hazard 1',
  ],
  [
    'a hazard out of play',
    { hazards: [{ kind: 'water', reachM: 600, carryM: 640, side: 'across' }] },
    'hole 7: hazard 1',
  ],
  ['a turn on the green', { turn: { atM: 345, byDeg: 20 } }, 'hole 7: turn'],
])('%s is refused with its place', (_, change, at) => {
  const hole = holeNumbersSchema.parse({ ...HOLE, ...change });
  expect(numbersFaults([hole]).map((fault) => fault.at)).toEqual([at]);
});

test('a number is there once', () => {
  expect(numbersFaults([HOLE, HOLE]).map(({ at }) => at)).toEqual(['hole 7']);
  expect(numbersFaults([HOLE])).toEqual([]);
});
