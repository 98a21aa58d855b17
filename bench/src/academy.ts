import { randomUUID } from 'node:crypto';
import { newRecord, type RecordInput } from '@leeway/contract';

/** A made-up academy's players and shots. */

const CLUBS = ['driver', '3-wood', '5-iron', '6-iron', '7-iron', '8-iron', '9-iron', 'wedge'];
export const MADE_AT = '2026-05-14T09:30:00Z';

export const shotOf = (owner: string, session: string, i: number): RecordInput =>
  newRecord('shot', {
    owner,
    id: randomUUID(),
    madeAt: MADE_AT,
    body: {
      session,
      club: CLUBS[i % CLUBS.length] ?? '',
      swing: 'full',
      carryM: 60 + (i % 997) / 5,
      sideM: ((i * 31) % 41) / 2 - 10,
      readings: { 'ball speed': 50.4, launch: 19.2, spin: 6120 },
      raw: { line: i + 2, cells: ['7-iron', '143.7', '2.7 L'] },
    },
  });

/** A player with one session of so many shots. */
export function playerOf(owner: string, name: string, shots: number): readonly RecordInput[] {
  const session = randomUUID();
  const header = { owner, madeAt: MADE_AT };
  return [
    newRecord('profile', { ...header, id: randomUUID(), body: { name } }),
    newRecord('session', { ...header, id: session, body: { date: '2026-05-14', purpose: 'range' } }),
    ...Array.from({ length: shots }, (_, i) => shotOf(owner, session, i)),
  ];
}
