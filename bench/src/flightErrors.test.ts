import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { errorTable } from './flightErrors.ts';

test('docs/models/flight.md prints the errors as the model has them', () => {
  const page = readFileSync(new URL('../../docs/models/flight.md', import.meta.url), 'utf8');
  expect(page).toContain(`\`\`\`text\n${errorTable()}\n\`\`\``);
});
