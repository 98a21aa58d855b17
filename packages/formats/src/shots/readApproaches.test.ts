import { RAD_PER_DEG, YARD_M } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import { approachBalls, approachNotes } from './approachBalls.ts';
import { readApproaches } from './readApproaches.ts';

const HEAD = 'club,to flag (yd),past (paces),right (paces),front (yd),back (yd),width (yd),missed,date';
const read = (...rows: string[]) => readApproaches(`${HEAD}\n${rows.join('\n')}\n`, 'a.csv', 'yd');

describe('approaches', () => {
  test('marks are balls on the course, at their distance from where they were hit', () => {
    const { value = [], faults } = read('7i,150,-4,3L,138,165,24,,2026-05-01');
    expect(faults).toEqual([]);
    expect(value[0]).toMatchObject({ club: '7i', swing: 'full', mark: { pastM: -4 * YARD_M, rightM: -3 * YARD_M } });
    const { balls, unseen } = approachBalls(value, [12], 34, true);
    expect(balls[0]).toMatchObject({ onCourse: true, ageDays: 12 });
    expect(balls[0]?.carryM).toBeCloseTo(Math.hypot(146, 3) * YARD_M, 9);
    expect(balls[0]?.directionDeg).toBeCloseTo(-Math.atan(3 / 146) / RAD_PER_DEG, 9);
    expect([balls[0]?.seenIn, balls[0]?.counts, unseen]).toEqual([undefined, undefined, []]);
  });

  test('no mark is a ball of which the side is known, if all approaches are there; else marks are what the green shows, and count for half', () => {
    const { value = [] } = read('7i,150,2,0,138,165,24,,', '7i,150,,,138,165,24,short,', '7i,150,,,138,165,24,sand,');
    expect(approachBalls(value, [], 34, true).unseen.map((u) => u.side)).toEqual(['short', 'away']);
    const some = approachBalls(value, [], 34, false);
    expect(some.unseen).toEqual([]);
    expect(some.balls[0]?.counts).toBe(0.5);
    expect(some.balls[0]?.seenIn?.shortM).toBeCloseTo(138 * YARD_M, 9);
    expect(some.balls[0]?.seenIn?.rightDeg).toBeCloseTo(Math.atan(12 / 150) / RAD_PER_DEG, 9);
    expect(approachNotes(value, false).map((f) => f.code)).toEqual(['some-logged']);
    expect(approachNotes(value, true)).toEqual([]);
  });

  test('a mark into the wind is moved to the reference day with its green', () => {
    const text = `${HEAD},wind speed (m/s),wind from,bearing\n7i,150,0,0,138,165,24,,,6,0,0\n`;
    const { value = [] } = readApproaches(text, 'a.csv', 'yd');
    const { balls } = approachBalls(value, [], 34, false);
    expect(balls[0]?.carryM ?? 0).toBeGreaterThan(160 * YARD_M);
    expect((balls[0]?.seenIn?.longM ?? 0) / (balls[0]?.carryM ?? 1)).toBeCloseTo(165 / 150, 6);
  });

  test('rows that cannot be read are told with their line, and the rest kept', () => {
    const { value, faults } = read(
      '7i,150,2,0,,,,,',
      ',150,2,0,,,,,',
      '7i,abc,2,0,,,,,',
      '7i,150,2,0,,,,short,',
      '7i,150,,,,,,up,',
      '7i,150,,,,,,,',
      '7i,150,100,0,,,,,',
    );
    expect(value).toHaveLength(1);
    expect(faults.map((f) => [f.code, f.line])).toEqual([3, 4, 5, 6, 7, 8].map((line) => ['approach', line]));
    expect(approachNotes(value ?? [], true).map((f) => f.code)).toEqual(['green-assumed']);
    expect(readApproaches('club,carry\n7i,150\n', 'b.csv', 'yd').faults.map((f) => f.code)).toEqual([
      'approach-columns',
    ]);
  });
});
