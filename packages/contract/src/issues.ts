import type { z } from 'zod';
import type { Fault } from './fault.ts';

/** A place in a JSON document: `patterns[2].components[0].weight`; empty for the whole. */
export type Place = string;

type Path = readonly PropertyKey[];
type Issue = z.core.$ZodIssue;

const MOST_FAULTS = 40;

/** Words what a schema refused as faults with the JSON path, what stands there and what was expected; at most 40, then a count. */
export function faultsOfIssues(issues: readonly Issue[], document: unknown, file: string): readonly Fault[] {
  const all = issues.flatMap((issue) => faultsOf(issue, [], document, file));
  if (all.length <= MOST_FAULTS) return all;
  const more = all.length - MOST_FAULTS;
  return [
    ...all.slice(0, MOST_FAULTS),
    {
      code: 'more-faults',
      level: 'refused',
      file,
      found: `${more} more faults`,
      expected: 'a file of the published shape',
    },
  ];
}

function faultsOf(issue: Issue, parent: Path, document: unknown, file: string): readonly Fault[] {
  const path = [...parent, ...issue.path];
  const make = (code: string, at: Path, found: string, expected: string): Fault => ({
    code,
    level: 'refused',
    file,
    at: placeOf(at),
    found,
    expected,
  });
  const found = shown(valueAt(document, path));
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys
        .slice(0, MOST_FAULTS + 1)
        .map((key) => make('unknown-key', [...path, key], `the key "${key}"`, 'a key of the published shape'));
    case 'invalid_union': {
      const nested = issue.errors.find((branch) => branch.some((i) => i.path.length > 0 || i.code !== 'invalid_type'));
      if (nested !== undefined) return nested.flatMap((i) => faultsOf(i, path, document, file));
      const kinds = issue.errors.flatMap((branch) => branch.map((i) => (i.code === 'invalid_type' ? i.expected : '')));
      return [make('wrong-type', path, found, kinds.map(kindOf).join(' or '))];
    }
    case 'invalid_type': {
      const missing = valueAt(document, path) === undefined;
      return [make(missing ? 'missing' : 'wrong-type', path, missing ? 'nothing' : found, kindOf(issue.expected))];
    }
    case 'invalid_value':
      return [
        make(path.at(-1) === 'version' ? 'version' : 'unknown-value', path, found, issue.values.map(String).join(', ')),
      ];
    case 'too_small':
      return [
        make(
          'out-of-range',
          path,
          sized(issue.origin, found, document, path),
          `at least ${String(issue.minimum)}${unitOf(issue.origin)}`,
        ),
      ];
    case 'too_big':
      return [
        make(
          'out-of-range',
          path,
          sized(issue.origin, found, document, path),
          `at most ${String(issue.maximum)}${unitOf(issue.origin)}`,
        ),
      ];
    default:
      return [make('unreadable', path, found, issue.message)];
  }
}

const unitOf = (origin: string): string => (origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '');

function sized(origin: string, found: string, document: unknown, path: Path): string {
  const value = valueAt(document, path);
  if (origin === 'array' && Array.isArray(value)) return `${value.length} entries`;
  if (origin === 'string' && typeof value === 'string')
    return value === '' ? 'an empty text' : `${value.length} characters`;
  return found;
}

const kindOf = (kind: string): string =>
  ({
    string: 'a text',
    number: 'a number',
    int: 'a whole number',
    array: 'a list',
    object: 'an object',
    boolean: 'true or false',
  })[kind] ?? kind;

const placeOf = (path: Path): Place =>
  path.map((p, i) => (typeof p === 'number' ? `[${p}]` : `${i > 0 ? '.' : ''}${String(p)}`)).join('');

function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return JSON.stringify(value).slice(0, 60);
}
