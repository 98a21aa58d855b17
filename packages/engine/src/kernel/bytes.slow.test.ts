import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { bytesPage } from './make/compile.ts';

it('the committed kernel is what its source compiles to', () => {
  expect(readFileSync(new URL('bytes.ts', import.meta.url), 'utf8')).toBe(bytesPage());
});
