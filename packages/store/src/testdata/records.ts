import { randomUUID } from 'node:crypto';
import { newRecord, type Profile, type RecordInput, type StoredShot } from '@leeway/contract';

/** Made-up records for tests. */

export const MADE_AT = '2026-05-14T09:30:00Z';

export const newId = (): string => randomUUID();

export const profileOf = (owner: string, body: Partial<Profile> = {}, id = newId()): RecordInput =>
  newRecord('profile', { owner, id, madeAt: MADE_AT, body: { name: 'Tilda Brook', hand: 'left', ...body } });

export const sessionOf = (owner: string, id = newId()): RecordInput =>
  newRecord('session', { owner, id, madeAt: MADE_AT, body: { date: '2026-05-14', purpose: 'range', ball: 'range' } });

export const shotOf = (owner: string, session: string, body: Partial<StoredShot> = {}, id = newId()): RecordInput =>
  newRecord('shot', {
    owner,
    id,
    madeAt: MADE_AT,
    body: {
      session,
      club: '7-iron',
      swing: 'full',
      carryM: 131.4,
      sideM: -2.5,
      readings: { 'ball speed': 50.4, launch: 19.2, spin: 6120 },
      raw: { line: 12, cells: ['7-iron', '143.7', '2.7 L'] },
      ...body,
    },
  });

export const noteOf = (owner: string, text: string, supersedes?: string, id = newId()): RecordInput =>
  newRecord('note', {
    owner,
    id,
    madeAt: MADE_AT,
    ...(supersedes === undefined ? {} : { supersedes }),
    body: { date: '2026-05-14', text },
  });

export const withdrawalOf = (owner: string, supersedes: string): RecordInput =>
  newRecord('withdrawal', { owner, id: newId(), madeAt: MADE_AT, supersedes, body: {} });

export const planOf = (owner: string, supersedes?: string): RecordInput =>
  newRecord('plan', {
    owner,
    id: newId(),
    madeAt: MADE_AT,
    ...(supersedes === undefined ? {} : { supersedes }),
    body: {
      date: '2026-05-16',
      plan: {
        version: 1,
        day: { windMps: 0, temperatureC: 20, pressureHpa: 1013.25, humidityPercent: 50 },
        player: { name: 'Tilda Brook' },
        holes: [],
      },
    },
  });
