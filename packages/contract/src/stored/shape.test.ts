import { expect, test } from 'vitest';
import * as z from 'zod';
import { currentVersion, readForm, type Forms } from './shape.ts';

/** A bag as three programs kept it: a list of names, then clubs with names, then lofts in radians too. */
const FORMS: Forms = [
  { schema: z.strictObject({ bag: z.array(z.string()) }) },
  {
    schema: z.strictObject({ clubs: z.array(z.strictObject({ name: z.string() })) }),
    upgrade: (before) => ({ clubs: (before as { bag: string[] }).bag.map((name) => ({ name })) }),
  },
  {
    schema: z.strictObject({ clubs: z.array(z.strictObject({ name: z.string(), loftDeg: z.number().nullable() })) }),
    upgrade: (before) => ({
      clubs: (before as { clubs: { name: string }[] }).clubs.map((club) => ({ ...club, loftDeg: null })),
    }),
  },
];

test('a body of any form comes out in the newest', () => {
  const newest = { clubs: [{ name: 'spoon', loftDeg: null }] };
  expect(currentVersion(FORMS)).toBe(3);
  expect(readForm(FORMS, 1, { bag: ['spoon'] }, 'bag').value).toEqual(newest);
  expect(readForm(FORMS, 2, { clubs: [{ name: 'spoon' }] }, 'bag').value).toEqual(newest);
  expect(readForm(FORMS, 3, newest, 'bag').value).toEqual(newest);
});

test('a body must have the form it says, not another', () => {
  expect(readForm(FORMS, 2, { bag: ['spoon'] }, 'bag').faults).toMatchObject([
    { code: 'missing', at: 'clubs' },
    { code: 'unknown-key', at: 'bag' },
  ]);
});

test.each([0, 4, 1.5])('version %d is refused', (version) => {
  expect(readForm(FORMS, version, {}, 'bag').faults).toMatchObject([{ code: 'version', expected: '1 to 3' }]);
});

test('an upgrade that makes a wrong body is caught', () => {
  const wrong: Forms = [FORMS[0], { schema: z.strictObject({ clubs: z.array(z.string()) }), upgrade: () => ({}) }];
  expect(readForm(wrong, 1, { bag: [] }, 'bag').faults).toMatchObject([{ code: 'missing', at: 'clubs' }]);
});
