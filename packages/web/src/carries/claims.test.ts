import { YARD_M } from '@leeway/engine';
import { expect, test } from 'vitest';
import { clubsOf, readCarryM, typedOf } from './claims.ts';

const BAG = [
  { name: 'driver', loftDeg: 10.5, claimedCarryM: 210.31 },
  { name: 'PW', claimedCarryM: 100, swings: ['punch', { name: 'half', claimedCarryM: 61.3 }] },
];

test('a bag whose lines are not touched keeps its every digit, in yards and in metres', () => {
  for (const units of ['yd', 'm'] as const) expect(clubsOf(typedOf(BAG, units), BAG, units)).toEqual(BAG);
});

test('a typed carry is in the units of the page, and a new swing joins the club', () => {
  const [driver, wedge] = typedOf(BAG, 'yd');
  if (driver === undefined || wedge === undefined) throw new Error('no bag');
  const typed = [
    { ...driver, carries: { ...driver.carries, full: '225' } },
    { ...wedge, carries: { full: '', 'three-quarter': '88,5', half: '' } },
    { name: ' 7-iron ', carries: { full: '150', 'three-quarter': '', half: '' } },
    { name: '', carries: { full: '10', 'three-quarter': '', half: '' } },
  ];
  expect(clubsOf(typed, BAG, 'yd')).toEqual([
    { name: 'driver', loftDeg: 10.5, claimedCarryM: 225 * YARD_M },
    { name: 'PW', swings: ['punch', 'half', { name: 'three-quarter', claimedCarryM: 88.5 * YARD_M }] },
    { name: '7-iron', claimedCarryM: 150 * YARD_M },
  ]);
});

test.each(['15o', '-3', '0', '600', '1e2', '1 50'])('%j is no carry', (text) => {
  expect(readCarryM(text, 'yd')).toBeNaN();
  const none = { full: text, 'three-quarter': '', half: '' };
  expect(clubsOf([{ name: 'driver', carries: none }], [], 'yd')).toBeUndefined();
});

test('a club stands there once', () => {
  const none = { full: '', 'three-quarter': '', half: '' };
  const twice = ['7-iron', '7-Iron '].map((name) => ({ name, carries: none }));
  expect(clubsOf(twice, [], 'yd')).toBeUndefined();
});
