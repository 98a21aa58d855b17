import { expect, test } from 'vitest';
import { isLoopbackHost } from './door.ts';

test.each(['localhost', 'localhost:4310', '127.0.0.1:80', '[::1]:4310', 'LOCALHOST:1'])(
  '%s is this machine',
  (host) => {
    expect(isLoopbackHost(host)).toBe(true);
  },
);

test.each([
  undefined,
  '',
  'golf.example',
  'localhost.golf.example',
  '127.0.0.1.golf.example:4310',
  '127.0.0.1@golf.example',
  'localhost:',
  '0.0.0.0:4310',
])('%s is not', (host) => {
  expect(isLoopbackHost(host)).toBe(false);
});
