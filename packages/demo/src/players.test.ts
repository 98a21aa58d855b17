import { readFileSync } from 'node:fs';
import { readPlayer } from '@leeway/contract';
import { expect, test } from 'vitest';
import { DEMO, DEMO_PLAYERS } from './demoPath.ts';
import { PLAYERS } from './players.ts';

test('the app opens on the first player', () => {
  expect(DEMO_PLAYERS[0]).toEqual({ name: 'Odile Varga', player: DEMO.player, shots: DEMO.shots });
});

/** A fitted figure may be this many of its standard errors from the truth, over all swings of all players. */
const ERRORS = 3.5;

test.each(PLAYERS.map((p, i) => [p.name, p, i] as const))(
  '%s: what is fitted lies near the truth',
  (name, truth, i) => {
    const path = DEMO_PLAYERS[i]?.player ?? '';
    const { value, faults } = readPlayer(readFileSync(path, 'utf8'), path);
    expect(faults).toEqual([]);
    expect([value?.name, value?.hand, value?.handicapIndex]).toEqual([name, truth.hand, truth.handicapIndex]);
    const away = truth.swings.map((swing) => {
      const fit = value?.patterns?.find((p) => p.club === swing.club && p.swing === swing.swing)?.fit;
      if (fit === undefined) throw new Error(`no fit of ${swing.club}, ${swing.swing}`);
      expect(fit.n).toBe(swing.balls);
      return {
        carry: Math.abs(fit.carryM - swing.carryM) / fit.seCarryM,
        carryShare: Math.abs(fit.carryM / swing.carryM - 1),
        direction: Math.abs(fit.directionDeg - swing.directionDeg) / fit.seDirectionDeg,
      };
    });
    for (const { carry, carryShare, direction } of away) {
      expect(carry).toBeLessThan(ERRORS);
      expect(carryShare).toBeLessThan(0.08);
      expect(direction).toBeLessThan(ERRORS);
    }
    // Four times in five within 1.28 errors: most of ten to sixteen swings are.
    expect(away.filter(({ carry }) => carry < 1.282).length).toBeGreaterThanOrEqual(away.length * 0.5);
  },
);
