/**
 * A JSON value as one text: keys in order of their code units, no spaces, absent keys left out. Two values that hold the same have the same text.
 * Throws on what JSON cannot hold.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`JSON holds no ${value}.`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object') throw new TypeError(`JSON holds no ${typeof value}.`);
  const entries = Object.entries(value)
    .filter(([, held]) => held !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, held]) => `${JSON.stringify(key)}:${canonicalJson(held)}`).join(',')}}`;
}
