import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as z from 'zod';
import { KIND_NAMES, KINDS } from './kinds.ts';
import { newestForm, readRecord } from './record.ts';
import { currentVersion } from './shape.ts';

const FOLDER = new URL('testdata/', import.meta.url);
const everyForm = KIND_NAMES.flatMap((kind) => KINDS[kind].forms.map((form, i) => ({ kind, version: i + 1, form })));

/** A form that was ever stored stays as it was: its schema is written down, and changing it is adding a form. */
test.each(everyForm)('docs/schemas/stored/$kind.$version is what the code says', async ({ kind, version, form }) => {
  const text = `${JSON.stringify({ title: kind, ...z.toJSONSchema(form.schema) }, null, 2)}\n`;
  await expect(text).toMatchFileSnapshot(`../../../../docs/schemas/stored/${kind}.${version}.schema.json`);
});

test('there is a record of every form, and of no other', () => {
  const files = readdirSync(FOLDER).toSorted();
  expect(files).toEqual(everyForm.map(({ kind, version }) => `${kind}.${version}.json`).toSorted());
});

test.each(everyForm)('a $kind stored in version $version is still read', ({ kind, version }) => {
  const record: unknown = JSON.parse(readFileSync(new URL(`${kind}.${version}.json`, FOLDER), 'utf8'));
  const { value, faults } = readRecord(record, kind);
  expect(faults).toEqual([]);
  if (value === undefined) throw new Error('no record');
  expect(value).toEqual(record);
  const { forms } = KINDS[kind];
  expect(forms[currentVersion(forms) - 1]?.schema.safeParse(newestForm(value).body).success).toBe(true);
});
