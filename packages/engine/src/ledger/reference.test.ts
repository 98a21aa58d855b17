import { describe, expect, test } from 'vitest';
import type { PlayerFile } from '../player/file.ts';
import { playerModel } from '../player/model.ts';
import type { NormalPart, PlayerModel } from '../player/option.ts';
import { partsOf } from '../player/pattern.ts';
import { EXECUTION_HABITS, usualPlayer, withUsual } from './reference.ts';

const swing = { carryM: 130, sdCarryM: 14, directionDeg: 2, directionSdDeg: 6, corr: 0, mishitShare: 0.35, full: true };
const fit = {
  model: 'two-part',
  n: 40,
  seCarryM: 1,
  directionDeg: 2,
  seDirectionDeg: 1,
  sdCarryM: 14,
  seLogSdCarry: 0.1,
  directionSdDeg: 6,
  seLogDirectionSd: 0.1,
  carryM: 130,
  corr: 0,
  mishitShare: 0.35,
  seMishitShare: 0.05,
} as const;
const file: PlayerFile = {
  version: 1,
  name: 'Ulla Brandt',
  handicapIndex: 14,
  clubs: [{ name: 'driver' }, { name: '7-iron' }, { name: '54°' }],
  patterns: [{ club: '7-iron', swing: 'full', components: partsOf(swing), fit }],
  putting: { sdAngleDeg: 3, sdDistance: 0.2, pastM: 0.2, captureM: 0.9 },
  shortGame: { spread: 3, mishitShare: 0.3 },
};
const partsIn = (player: PlayerModel | undefined, club = '7-iron'): readonly NormalPart[] =>
  player!.options.find((o) => o.club === club && o.full)!.byLie.fairway!.parts;
const own = playerModel(file);
const usual = usualPlayer(file);
const mishits = (parts: readonly NormalPart[]): number => 1 - parts[0]!.weight;

describe('one part of the game as it is usual', () => {
  test('strike takes the usual share of mishits and leaves good strikes as they are', () => {
    const parts = partsIn(withUsual(file, 'strike'));
    expect(mishits(partsIn(own))).toBeGreaterThan(1.5 * mishits(parts));
    expect(mishits(parts)).toBeCloseTo(mishits(partsIn(usual)), 12);
    expect(parts.reduce((sum, p) => sum + p.weight, 0)).toBeCloseTo(1, 12);
    expect({ ...parts[0], weight: 0 }).toEqual({ ...partsIn(own)[0], weight: 0 });
  });

  test('direction takes the usual angle and a straight mean, length the usual share of carry; the carry stays', () => {
    const [ownGood, usualGood] = [partsIn(own)[0]!, partsIn(usual)[0]!];
    const straight = partsIn(withUsual(file, 'direction'))[0]!;
    expect(straight.sdAcrossM / straight.alongM).toBeCloseTo(usualGood.sdAcrossM / usualGood.alongM, 12);
    expect(straight.acrossM).toBeCloseTo(0, 9);
    expect([straight.alongM, straight.sdAlongM]).toEqual([ownGood.alongM, ownGood.sdAlongM]);
    const even = partsIn(withUsual(file, 'length'))[0]!;
    expect(even.sdAlongM / even.alongM).toBeCloseTo(usualGood.sdAlongM / usualGood.alongM, 12);
    expect([even.alongM, even.sdAcrossM]).toEqual([ownGood.alongM, ownGood.sdAcrossM]);
  });

  test('putting and the short game change nothing else', () => {
    const putts = withUsual(file, 'putting')!;
    expect(putts.options).toEqual(own.options);
    expect(putts.putting).toEqual(usual.putting);
    const short = withUsual(file, 'shortGame')!;
    expect(partsIn(short)).toEqual(partsIn(own));
    expect(short.putting).toEqual(own.putting);
    const chip = (p: PlayerModel) => p.options.find((o) => o.evidence === 'short game')!.byLie.fairway!.parts[0]!;
    expect(chip(short).sdAlongM).toBeLessThan(chip(own).sdAlongM);
  });

  test('of what was never measured there is nothing to compare', () => {
    const { putting: _, shortGame: __, ...bare } = file;
    expect(EXECUTION_HABITS.filter((habit) => withUsual(bare, habit) === undefined)).toEqual(['shortGame', 'putting']);
  });

  test('a usual player is told from themselves by nothing', () => {
    const { patterns: _, putting: __, shortGame: ___, ...bare } = file;
    const parts = partsIn(withUsual(bare, 'strike'));
    parts.forEach((p, i) => expect(p.weight).toBeCloseTo(partsIn(playerModel(bare))[i]!.weight, 12));
  });
});
