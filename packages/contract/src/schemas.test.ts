import { expect, test } from 'vitest';
import { carriesJsonSchema } from './carries.ts';
import { flyJsonSchema } from './fly.ts';
import { ledgerJsonSchema } from './ledger.ts';
import { planJsonSchema, shotJsonSchema } from './plan.ts';
import { playerJsonSchema } from './player.ts';
import { roundJsonSchema } from './round.ts';

/** The schemas in docs/schemas are these; `vitest -u` renews them. */
test.each([
  ['player', playerJsonSchema],
  ['plan', planJsonSchema],
  ['shot', shotJsonSchema],
  ['carries', carriesJsonSchema],
  ['fly', flyJsonSchema],
  ['round', roundJsonSchema],
  ['ledger', ledgerJsonSchema],
] as const)('docs/schemas/%s.schema.json is what the code says', async (name, schema) => {
  const text = `${JSON.stringify(schema(), null, 2)}\n`;
  await expect(text).toMatchFileSnapshot(`../../../docs/schemas/${name}.schema.json`);
});
