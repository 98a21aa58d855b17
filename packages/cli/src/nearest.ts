/** The name closest to a mistyped one, if at most a third of its letters, rounded up, and at most three must change. */
export function nearest(typed: string, names: readonly string[]): string | undefined {
  const within = Math.min(3, Math.ceil(typed.length / 3));
  let best: string | undefined;
  let bestChanges = within + 1;
  for (const name of names) {
    const changes = changesBetween(typed, name);
    if (changes < bestChanges) [best, bestChanges] = [name, changes];
  }
  return best;
}

/** Letters to insert, drop or replace to make one word the other. Levenshtein (1966), by rows. */
export function changesBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
