import { describe, expect, it } from 'vitest';
import { parseJson } from './json.ts';

const placeOf = (text: string): string => {
  const [fault] = parseJson(text, 'a.json').faults;
  return `${fault?.code} ${fault?.line}:${fault?.column}`;
};

describe('JSON from anywhere', () => {
  it('gives the value, with or without a byte order mark', () => {
    expect(parseJson('{"a":[1,2]}', 'a.json')).toEqual({ value: { a: [1, 2] }, faults: [] });
    expect(parseJson('\uFEFF7', 'a.json').value).toBe(7);
  });

  it('says where it stops being JSON', () => {
    expect(placeOf('{"a": 1,\n "b": oops}')).toBe('not-json 2:7');
    expect(placeOf('{"a": 1')).toBe('not-json 1:8');
    expect(placeOf('{"a": NaN}')).toBe('not-json 1:7');
    expect(placeOf('hello')).toBe('not-json 1:1');
    expect(placeOf('[1,\r\n2,]')).toBe('not-json 2:3');
  });

  it('refuses nothing, and brackets without end', () => {
    expect(placeOf(' \n')).toBe('empty undefined:undefined');
    expect(placeOf('['.repeat(1_000_000))).toBe('too-deep 1:65');
    expect(parseJson(`"${'['.repeat(1000)}"`, 'a.json').value).toBe('['.repeat(1000));
  });
});
