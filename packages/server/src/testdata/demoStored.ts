import { readFileSync } from 'node:fs';
import { HOUSE, newRecord, readPlayer } from '@leeway/contract';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import { readShots } from '@leeway/formats';
import { put, type Store } from '@leeway/store';
import { MADE_AT, newId } from '@leeway/store/testing';

/** The made-up course and its first player with all shots, put into a store. */
export async function storeDemo(store: Store): Promise<{ readonly owner: string; readonly course: string }> {
  const [owner, course, session] = [newId(), newId(), newId()];
  const [demo] = DEMO_PLAYERS;
  const player = readPlayer(readFileSync(demo?.player ?? '', 'utf8'), 'player').value;
  const shots = readShots(readFileSync(demo?.shots ?? ''), 'shots', { units: 'yd' }).value ?? [];
  if (player === undefined || shots.length === 0) throw new Error('the demo was refused');
  const { version: _version, patterns: _patterns, ...profile } = player;
  const header = { owner, madeAt: MADE_AT };
  const ground = { file: 'tolvane.geojson', text: readFileSync(DEMO.ground, 'utf8') };
  const { faults } = await put(store, [
    newRecord('course', { owner: HOUSE, id: course, madeAt: MADE_AT, body: { name: 'Tolvane Links', ground } }),
    newRecord('profile', { ...header, id: newId(), body: profile as never }),
    newRecord('session', { ...header, id: session, body: { date: '2026-05-14', purpose: 'range' } }),
    ...shots.map(({ club, swing, carryM, sideM }) =>
      newRecord('shot', {
        ...header,
        id: newId(),
        body: { session, club, swing, carryM, ...(sideM === undefined ? {} : { sideM }) },
      }),
    ),
  ]);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return { owner, course };
}
