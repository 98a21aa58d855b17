import type { Fault, ShotRow } from '@leeway/contract';

const plain = (name: string): string => name.trim().toLowerCase();

/** The players named in rows of shots, each as spelled first. */
export function playersIn(rows: readonly ShotRow[]): readonly string[] {
  const names = new Map<string, string>();
  for (const { player } of rows)
    if (player !== undefined && !names.has(plain(player))) names.set(plain(player), player);
  return [...names.values()];
}

/**
 * The shots of one player: all of them unless the rows name several. Then a name is needed, and the others' shots are left out, and told; rows
 * without a name are taken for the player's.
 */
export function shotsOfOne(
  rows: readonly ShotRow[],
  name: string | undefined,
): { readonly rows: readonly ShotRow[]; readonly faults: readonly Fault[] } {
  const names = playersIn(rows);
  if (names.length < 2) return { rows, faults: [] };
  const second = rows.find((r) => r.player !== undefined && plain(r.player) === plain(names[1] ?? ''));
  const place = { file: second?.file ?? '', ...(second === undefined ? {} : { line: second.line }) };
  const found = `shots of ${names.length} players: ${names.slice(0, 5).join(', ')}`;
  const fault = { code: 'several-players', ...place, found };
  if (name === undefined || !names.some((n) => plain(n) === plain(name)))
    return { rows, faults: [{ ...fault, level: 'refused', expected: 'one player, or --name with one of them' }] };
  const kept = rows.filter((r) => r.player === undefined || plain(r.player) === plain(name));
  const done = `${rows.length - kept.length} shots of others are left out`;
  return { rows: kept, faults: [{ ...fault, level: 'left out', expected: 'one player', done }] };
}
