import type { ShotRow } from '@leeway/contract';
import { randomFrom, YARD_M } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { oddSessions } from './oddSessions.ts';

const CLUBS = { '5i': 155, '7i': 140, '9i': 118, PW: 106 };

function session(file: string, seed: number, each = 12): ShotRow[] {
  const random = randomFrom(seed);
  return Object.entries(CLUBS).flatMap(([club, carry], k) =>
    Array.from({ length: each }, (_, i): ShotRow => {
      const missed = random.next() < 0.15;
      const carryM = carry * (missed ? random.beta(3.2, 2) : 1 + 0.06 * random.normal());
      return { file, line: 2 + k * each + i, club, swing: 'full', carryM, sideM: 6 * random.normal(), readings: {} };
    }),
  );
}
const codes = (...rows: ShotRow[][]): readonly string[] => oddSessions(rows.flat()).map((f) => f.code);

describe('sessions beside each other', () => {
  it('of one player on two days are nothing odd', () => {
    for (let seed = 1; seed < 20; seed++) expect(codes(session('a', seed), session('b', 100 + seed))).toEqual([]);
  });

  it('are told where one repeats the other but for roundings and a few shots', () => {
    const first = session('a', 3);
    const rounded = first.flatMap((r, i): ShotRow[] =>
      i % 11 === 0
        ? []
        : [{ ...r, file: 'b', carryM: YARD_M * Math.round(r.carryM / YARD_M), sideM: Math.round(r.sideM ?? 0) }],
    );
    const [fault] = oddSessions([...first, ...rounded]);
    expect(fault).toMatchObject({ code: 'session-nearly-twice', file: 'b', level: 'note' });
    expect(fault?.found).toContain('line 2 of a');
  });

  it('are told where one is in yards and the other in metres', () => {
    let told = 0;
    for (let seed = 1; seed < 20; seed++) {
      const other = session('b', 50 + seed).map((r) => ({ ...r, carryM: r.carryM / YARD_M }));
      told += codes(session('a', seed), other).filter((c) => c === 'session-units').length;
    }
    expect(told).toBeGreaterThan(12);
  });
});
