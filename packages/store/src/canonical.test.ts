import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalJson } from './canonical.ts';

test('the text does not depend on the order of keys, and leaves out what is absent', () => {
  expect(canonicalJson({ b: [1, { d: null, c: 'x' }], a: true, z: undefined })).toBe(
    '{"a":true,"b":[1,{"c":"x","d":null}]}',
  );
});

test('it is JSON, and says the same', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test.each([NaN, Infinity, () => 1, 1n])('%s is not JSON', (value) => {
  expect(() => canonicalJson([value])).toThrow(TypeError);
});
