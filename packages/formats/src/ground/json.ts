import { GROUND_CAPS } from '@leeway/contract';
import type { FaultBook } from './faultBook.ts';

export type JsonObject = { readonly [key: string]: unknown };

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Parses JSON whose brackets are not nested absurdly; refuses anything else with its line and column. */
export function parseJson(text: string, book: FaultBook): unknown {
  if (bracketDepth(text) > GROUND_CAPS.depth) {
    book.add({
      code: 'too-deep',
      level: 'refused',
      found: `brackets nested more than ${GROUND_CAPS.depth} deep`,
      expected: 'a map file',
    });
    return undefined;
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const offset = Number(/position (\d+)/.exec(message)?.[1] ?? NaN);
    book.add(
      { code: 'bad-json', level: 'refused', found: message.split('\n')[0] ?? message, expected: 'well-formed JSON' },
      Number.isNaN(offset) ? undefined : placeOf(text, offset),
    );
    return undefined;
  }
}

/** Deepest nesting of brackets outside strings, counted up to one beyond the cap. */
function bracketDepth(text: string): number {
  let [depth, deepest, inString] = [0, 0, false];
  for (let i = 0; i < text.length && deepest <= GROUND_CAPS.depth; i++) {
    const c = text.charCodeAt(i);
    if (inString) {
      if (c === 92) i++;
      else if (c === 34) inString = false;
    } else if (c === 34) inString = true;
    else if (c === 123 || c === 91) deepest = Math.max(deepest, ++depth);
    else if (c === 125 || c === 93) depth--;
  }
  return deepest;
}

const placeOf = (text: string, offset: number): string => {
  const before = text.slice(0, offset).split('\n');
  return `line ${before.length}, column ${(before[before.length - 1]?.length ?? 0) + 1}`;
};
