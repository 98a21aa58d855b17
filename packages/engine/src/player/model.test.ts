import { describe, expect, it } from 'vitest';
import type { Lie } from '../quantity/lies.ts';
import type { PlayerFile, StoredFit, StoredPattern } from './file.ts';
import { playerModel } from './model.ts';
import type { NormalPart, Option, PlayerModel } from './option.ts';
import { partsOf } from './pattern.ts';

const GOOD: NormalPart = { weight: 0.8, alongM: 140, acrossM: 2, sdAlongM: 7, sdAcrossM: 8, corr: -0.2 };
const FAT: NormalPart = { weight: 0.2, alongM: 90, acrossM: 0, sdAlongM: 20, sdAcrossM: 9, corr: 0 };
const stated = (more: Partial<StoredPattern> = {}): StoredPattern => ({
  club: '7I',
  swing: 'full',
  components: [GOOD, FAT],
  ...more,
});
const file = (more: Partial<PlayerFile> = {}): PlayerFile => ({ version: 1, name: 'A player', ...more });

function only(model: PlayerModel): Option {
  const [first, ...rest] = model.options;
  expect(rest).toHaveLength(0);
  if (first === undefined) throw new Error('no option');
  return first;
}
const named = (model: PlayerModel, club: string, swing = 'full'): Option | undefined =>
  model.options.find((o) => o.club === club && o.swing === swing);
const good = (option: Option | undefined, lie: Lie = 'fairway'): NormalPart | undefined => option?.byLie[lie]?.parts[0];

function fitOf(n: number, carryM: number): StoredFit {
  const fit = { n, carryM, seCarryM: 2, directionDeg: 1, seDirectionDeg: 0.5, sdCarryM: 8, seLogSdCarry: 0.1 };
  return {
    model: 'two-part',
    ...fit,
    directionSdDeg: 4,
    seLogDirectionSd: 0.1,
    corr: 0,
    mishitShare: 0.15,
    seMishitShare: 0.05,
  };
}
function fitted(club: string, swing: string, n: number, carryM: number): StoredPattern {
  const fit = fitOf(n, carryM);
  return { club, swing, components: partsOf({ ...fit, full: swing === 'full' }), fit };
}

describe('a stated player', () => {
  it('plays exactly the stated patterns, with no doubt and nothing behind them', () => {
    const model = playerModel(
      file({ handicapIndex: 8, clubs: [{ name: 'Driver' }, { name: '7I' }], patterns: [stated()] }),
    );
    const option = only(model);
    expect(option.byLie.tee).toEqual({ parts: [GOOD, FAT], rest: false });
    expect(option.byLie.fairway).toEqual(option.byLie.tee);
    expect(option.byLie.penalty).toBeUndefined();
    expect(Object.values(option.doubt).every((x) => x === 0)).toBe(true);
    expect(model.learnable).toHaveLength(0);
  });

  it('is not available from a lie it does not state, once it states any', () => {
    const parts = [{ ...GOOD, weight: 1 }];
    const model = playerModel(
      file({ patterns: [stated({ lie: 'fairway', components: parts, rest: true }), stated({ lie: 'penalty' })] }),
    );
    const option = only(model);
    expect(Object.keys(option.byLie).toSorted()).toEqual(['fairway', 'penalty']);
    expect(option.byLie.fairway).toEqual({ parts, rest: true });
  });

  it('stands for tee and fairway without a lie beside a pattern with one, and brings weights to 1', () => {
    const rounded = [{ ...GOOD, weight: 0.799 }, FAT];
    const option = only(playerModel(file({ patterns: [stated({ components: rounded }), stated({ lie: 'rough' })] })));
    expect(Object.keys(option.byLie).toSorted()).toEqual(['fairway', 'rough', 'tee']);
    expect(good(option)?.weight).toBeCloseTo(0.799 / 0.999, 12);
  });

  it('scales a pattern without a lie by its own multipliers of a lie', () => {
    const lies = { rough: { distance: 0.9, spread: 1.3 } };
    const option = only(playerModel(file({ patterns: [stated()], lies })));
    const rough = good(option, 'rough');
    expect(rough?.alongM).toBeCloseTo(126, 12);
    expect(rough?.sdAlongM).toBeCloseTo(7 * 0.9 * 1.3, 12);
    expect(rough?.sdAcrossM).toBeCloseTo(8 * 0.9 * 1.3, 12);
    expect(rough?.weight).toBe(0.8);
    expect(good(option, 'recovery')?.alongM).toBeCloseTo(84, 12);
  });

  it('has no driver among the trees', () => {
    const option = only(playerModel(file({ patterns: [stated({ club: 'DR' })] })));
    expect(option.byLie.recovery).toBeUndefined();
    expect(option.byLie.rough).toBeDefined();
  });

  it('putts by its own table', () => {
    const putting = [
      { distanceM: 0, strokes: 1 },
      { distanceM: 10, strokes: 2 },
    ];
    expect(playerModel(file({ patterns: [stated()], putting })).putting).toEqual(putting);
  });
});

describe('a player of a handicap', () => {
  it('plays a full swing of every club in the bag, and the short game, but no in-between swing', () => {
    const clubs = [{ name: 'Driver' }, { name: '7 iron' }, { name: 'Wedge 52' }, { name: 'Putter' }];
    const model = playerModel(file({ handicapIndex: 12, clubs }));
    const full = model.options.filter((o) => o.full).map((o) => o.club);
    expect(full).toEqual(['Driver', '7 iron', 'Wedge 52']);
    expect(model.options.filter((o) => !o.full).every((o) => o.evidence === 'short game')).toBe(true);
    expect(model.learnable.map((o) => `${o.club} ${o.swing}`)).toEqual([
      '7 iron three-quarter',
      'Wedge 52 three-quarter',
      'Wedge 52 half',
    ]);
  });

  it('plays an in-between swing that is listed or has ten balls, by the spelling of the file', () => {
    const clubs = [{ name: '9-Iron', swings: ['Three quarter'] }, { name: 'PW' }, { name: 'SW' }];
    const patterns = [fitted('pw', '3/4', 10, 90), fitted('SW', 'half', 9, 55)];
    const model = playerModel(file({ clubs, patterns }));
    expect(named(model, '9-Iron', 'Three quarter')?.evidence).toBe('prior');
    expect(named(model, 'PW', '3/4')?.evidence).toBe('fitted');
    expect(named(model, 'SW', 'half')).toBeUndefined();
    expect(model.learnable.map((o) => `${o.club} ${o.swing} ${o.evidence}`)).toContain('SW half fitted');
  });

  it('centres a claimed club on its claim and moves the others with it', () => {
    const plain = playerModel(file({ handicapIndex: 15, clubs: [{ name: '7i' }, { name: '9i' }] }));
    const long = playerModel(file({ handicapIndex: 15, clubs: [{ name: '7i', claimedCarryM: 150 }, { name: '9i' }] }));
    expect(named(long, '7i')?.evidence).toBe('claimed');
    expect(good(named(long, '7i'))?.alongM).toBeCloseTo(150, -0.5);
    const ratio = (good(named(long, '9i'))?.alongM ?? 0) / (good(named(plain, '9i'))?.alongM ?? 1);
    expect(ratio).toBeGreaterThan(1.05);
    expect(ratio).toBeLessThan(150 / 123);
    expect(named(long, '9i')?.doubt.seAlongM).toBeLessThan(named(plain, '9i')?.doubt.seAlongM ?? 0);
  });

  it('widens fitted swings by what the file says of the course', () => {
    const onCourse = { distanceSdPct: 6, mishitShare: 0.05 };
    const pattern = fitted('7i', 'full', 30, 140);
    const option = named(playerModel(file({ clubs: [{ name: '7i' }], patterns: [pattern], onCourse })), '7i');
    const from = pattern.components[0];
    expect(good(option)?.weight).toBeCloseTo(0.8, 12);
    expect(good(option)?.sdAlongM).toBeCloseTo(Math.hypot(from?.sdAlongM ?? 0, 0.06 * (from?.alongM ?? 0)), 9);
    expect(option?.doubt.balls).toBe(30);
  });

  it('needs nothing but a name', () => {
    const model = playerModel(file());
    expect(model.options.filter((o) => o.full)).toHaveLength(13);
    for (const option of [...model.options, ...model.learnable])
      for (const pattern of Object.values(option.byLie)) {
        expect(pattern.parts.reduce((sum, p) => sum + p.weight, 0)).toBeCloseTo(1, 12);
        for (const p of pattern.parts) {
          expect(p.sdAlongM).toBeGreaterThan(0);
          expect(p.sdAcrossM).toBeGreaterThan(0);
          expect(Math.abs(p.corr)).toBeLessThan(1);
        }
      }
  });

  it('chips, pitches and plays from sand, from 4 yd to the shortest full swing, a quarter apart', () => {
    const model = playerModel(file({ units: 'yd' }));
    const shorts = model.options.filter((o) => o.evidence === 'short game');
    expect(shorts.every((o) => Object.values(o.byLie).every((p) => p.rest))).toBe(true);
    const swings = new Set(shorts.map((o) => o.swing));
    expect(swings.has('chip 4 yd') && swings.has('pitch 17 yd') && swings.has('sand shot 17 yd')).toBe(true);
    const pitches = shorts.filter((o) => o.byLie.fairway).map((o) => good(o)?.alongM ?? 0);
    pitches.slice(1).forEach((m, i) => expect(m / (pitches[i] ?? 1)).toBeLessThan(1.45));
  });
});
