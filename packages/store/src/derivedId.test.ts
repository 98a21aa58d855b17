import { idSchema } from '@leeway/contract';
import { expect, test } from 'vitest';
import { derivedId } from './derivedId.ts';

test('the same parts give the same id, others another, and each is a UUID of version 8', () => {
  expect(derivedId('a', 'b')).toBe(derivedId('a', 'b'));
  const ids = [derivedId('a', 'b'), derivedId('ab'), derivedId('b', 'a'), derivedId('a', 'b', '')];
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) {
    expect(idSchema.safeParse(id).success).toBe(true);
    expect(id).toMatch(/^.{14}8.{4}[89ab]/);
  }
});
