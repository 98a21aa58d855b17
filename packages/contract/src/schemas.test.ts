import { expect, test } from 'vitest';
import { carriesJsonSchema } from './carries.ts';
import { flyJsonSchema } from './fly.ts';
import { planJsonSchema, shotJsonSchema } from './plan.ts';
import { playerJsonSchema } from './player.ts';

/** The schemas in docs/schemas are these; `vitest -u` renews them. */
test.each([
  ['player', playerJsonSchema],
  ['plan', planJsonSchema],
  ['shot', shotJsonSchema],
  ['carries', carriesJsonSchema],
  ['fly', flyJsonSchema],
] as const)('docs/schemas/%s.schema.json is what the code says', async (name, schema) => {
  const text = `${JSON.stringify(schema(), null, 2)}\n`;
  await expect(text).toMatchFileSnapshot(`../../../docs/schemas/${name}.schema.json`);
});
