import type { Fault, Read } from './fault.ts';

const DEEPEST = 64;

/**
 * Parses JSON text from anywhere: never throws. Refused: nothing but blanks, nesting deeper than 64, and text that is not JSON, with the
 * line and column where it stops being it. A byte order mark is passed over.
 */
export function parseJson(text: string, file: string): Read<unknown> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (body.trim() === '') return { faults: [refused('empty', file, 'nothing in it', 'JSON')] };
  const deep = deeperThan(body, DEEPEST);
  if (deep !== undefined)
    return {
      faults: [
        { ...refused('too-deep', file, 'brackets within brackets', `at most ${DEEPEST} deep`), ...place(body, deep) },
      ],
    };
  try {
    return { value: JSON.parse(body), faults: [] };
  } catch (error) {
    const at = positionOf(error) ?? breakOf(body);
    const found = body.slice(at, at + 20);
    return { faults: [{ ...refused('not-json', file, found === '' ? 'its end' : found, 'JSON'), ...place(body, at) }] };
  }
}

const refused = (code: string, file: string, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file,
  found,
  expected,
});

function positionOf(error: unknown): number | undefined {
  const told = error instanceof Error ? /position (\d+)/.exec(error.message)?.[1] : undefined;
  return told === undefined ? undefined : Number(told);
}

const LONGEST_SEARCHED = 2 ** 20;

/** Where text stops being the beginning of JSON, by halving, for engines that do not say; its end when it is too long to search. */
function breakOf(text: string): number {
  if (text.length > LONGEST_SEARCHED) return text.length;
  let good = 0;
  let bad = text.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (mayContinue(text.slice(0, middle))) good = middle;
    else bad = middle;
  }
  return mayContinue(text) ? text.length : good;
}

function mayContinue(start: string): boolean {
  try {
    JSON.parse(start);
    return true;
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    return positionOf(error) === start.length || /end of JSON|Unterminated/.test(message);
  }
}

function place(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at).split(/\r\n|\n|\r/);
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** Where brackets first stand deeper than `most`, strings passed over. */
function deeperThan(text: string, most: number): number | undefined {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c === '\\') i++;
      else if (c === '"') quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === '[' || c === '{') {
      if (++depth > most) return i;
    } else if (c === ']' || c === '}') depth--;
  }
  return undefined;
}
