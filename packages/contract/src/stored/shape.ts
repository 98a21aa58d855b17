import type * as z from 'zod';
import type { Fault, Read } from '../fault.ts';
import { faultsOfIssues } from '../issues.ts';

/** One form that a stored body has had. `upgrade` makes this form of the one before; the first form has none. */
export interface Form {
  readonly schema: z.ZodType;
  readonly upgrade?: (before: unknown) => unknown;
}

/** Every form of a stored body, oldest first: version n is the n-th. The last is what the program works with. */
export type Forms = readonly [Form, ...Form[]];

/** The version that is written today. */
export const currentVersion = (forms: Forms): number => forms.length;

/**
 * Checks a body against the form it says it has, and brings it up to the newest, step by step; each step is checked too.
 * Refused: a version that this program does not know, and a body that does not have its form.
 */
export function readForm(forms: Forms, version: number, body: unknown, name: string): Read<unknown> {
  const first = forms[version - 1];
  if (first === undefined) return { faults: [unknownVersion(forms, version, name)] };
  const steps: readonly Form[] = [{ schema: first.schema }, ...forms.slice(version)];
  let value = body;
  for (const form of steps) {
    const stepped: unknown = form.upgrade === undefined ? value : form.upgrade(value);
    const parsed = form.schema.safeParse(stepped);
    if (!parsed.success) return { faults: faultsOfIssues(parsed.error.issues, stepped, name) };
    value = parsed.data;
  }
  return { value, faults: [] };
}

const unknownVersion = (forms: Forms, version: number, name: string): Fault => ({
  code: 'version',
  level: 'refused',
  file: name,
  at: 'version',
  found: String(version),
  expected: forms.length === 1 ? '1' : `1 to ${forms.length}`,
});
