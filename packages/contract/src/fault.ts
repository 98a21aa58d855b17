/**
 * What could not be read or used, and where: an expected failure as a value. Wording lives at the surface (`wordFault`).
 * `level` "refused" stops the command (exit 1); "left out" drops one row or feature and goes on; "note" only tells what was done.
 */
export interface Fault {
  readonly code: string;
  readonly level: 'refused' | 'left out' | 'note';
  readonly file: string;
  /** 1-based line and column where the format has lines; a feature id or JSON path otherwise. */
  readonly line?: number;
  readonly column?: number;
  readonly at?: string;
  readonly found: string;
  readonly expected: string;
  /** What was done about it, e.g. "the row is left out". */
  readonly done?: string;
}

/** A result with what was noticed on the way. `value` is absent exactly when some fault is `refused`. */
export interface Read<T> {
  readonly value?: T;
  readonly faults: readonly Fault[];
}

const shown = (text: string): string => {
  const clean = text.replace(/\p{Cc}/gu, ' ');
  return clean.length > 80 ? `${clean.slice(0, 77)}…` : clean;
};

/** One line for a person: file, place, found, expected, what was done. */
export function wordFault(f: Fault): string {
  const place =
    f.line === undefined ? (f.at ?? '') : `line ${f.line}${f.column === undefined ? '' : `, column ${f.column}`}`;
  return `${f.file}${place ? `: ${place}` : ''}: found ${shown(f.found)}; expected ${shown(f.expected)}${f.done ? `; ${f.done}` : ''} [${f.code}]`;
}
