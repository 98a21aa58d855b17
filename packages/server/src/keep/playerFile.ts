import { randomUUID } from 'node:crypto';
import { type Fault, newRecord, type Profile, type Read, readPlayer } from '@leeway/contract';
import { playerList, put, type Store } from '@leeway/store';
import { utf8 } from './utf8.ts';

/** Keeps a Player file as a new player: who it is as a profile, patterns as fitted. Refused: what is no Player file, a name that a player has. */
export async function keepPlayerFile(
  store: Store,
  bytes: Uint8Array,
  file: string,
): Promise<Read<{ readonly player: string; readonly faults: readonly Fault[] }>> {
  const text = utf8(bytes, file);
  if (text.value === undefined) return { faults: text.faults };
  const { value, faults } = readPlayer(text.value, file);
  if (value === undefined) return { faults };
  const { version: _version, patterns, ...profile } = value;
  if ((await playerList(store)).some((player) => player.profile.body.name === profile.name))
    return {
      faults: [
        {
          code: 'name-taken',
          level: 'refused',
          file,
          found: `the name ${profile.name}, which a player has`,
          expected: 'another name',
        },
      ],
    };
  const [owner, id, madeAt] = [randomUUID(), randomUUID(), new Date().toISOString()];
  const stored = await put(store, [
    newRecord('profile', { owner, id, madeAt, body: profile as Profile }),
    ...(patterns === undefined || patterns.length === 0
      ? []
      : [
          newRecord('fitted', {
            owner,
            id: randomUUID(),
            madeAt,
            body: {
              patterns: patterns as never,
              from: { profile: id, sessions: [], shots: [], model: 'a Player file' },
            },
          }),
        ]),
  ]);
  if (stored.value === undefined) return { faults: stored.faults };
  return { value: { player: owner, faults }, faults: [] };
}
