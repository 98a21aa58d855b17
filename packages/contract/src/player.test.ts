import type { NormalPart, PlayerFile } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { wordFault } from './fault.ts';
import { playerJsonSchema, readPlayer } from './player.ts';

const part: NormalPart = { weight: 1, alongM: 140, acrossM: 1, sdAlongM: 7, sdAcrossM: 8, corr: 0.1 };

/** Every key of the type: a key that the schema lacks fails the test, and one that the type lacks does not compile. */
const EVERYTHING: Required<PlayerFile> = {
  version: 1,
  name: 'A player',
  hand: 'left',
  sex: 'woman',
  handicapIndex: 12.4,
  units: 'yd',
  clubs: [
    {
      name: 'Driver',
      loftDeg: 10.5,
      claimedCarryM: 190,
      swings: ['full', { name: 'three-quarter', claimedCarryM: 160 }],
    },
  ],
  patterns: [
    { club: 'Driver', swing: 'full', lie: 'tee', components: [part], rest: true },
    {
      club: '7i',
      swing: 'full',
      components: [part],
      fit: {
        model: 'two-part',
        n: 12,
        carryM: 140,
        seCarryM: 2,
        directionDeg: 0.4,
        seDirectionDeg: 1,
        sdCarryM: 7,
        seLogSdCarry: 0.2,
        directionSdDeg: 4,
        seLogDirectionSd: 0.2,
        corr: 0,
        mishitShare: 0.1,
        seMishitShare: 0.05,
        draws: [[part]],
      },
    },
  ],
  lies: {
    rough: { distance: 0.9, spread: 1.3 },
    bunker: { distance: 0.8, spread: 1.6 },
    recovery: { distance: 0.5, spread: 2 },
  },
  onCourse: { distanceSdPct: 6, mishitShare: 0.1 },
  putting: [
    { distanceM: 0, strokes: 1 },
    { distanceM: 20, strokes: 2.1 },
  ],
  shortGame: { spread: 1.2, mishitShare: 0.2, directionSdDeg: 3 },
};

const faultsOf = (change: object): string[] =>
  readPlayer(JSON.stringify({ ...EVERYTHING, ...change }), 'p.json').faults.map(
    (f) => `${f.level} ${f.code} ${f.at ?? ''}: ${f.found} / ${f.expected}`,
  );
const patterns = (...more: object[]): object => ({
  patterns: more.map((m) => ({ club: '7i', swing: 'full', components: [part], ...m })),
});

describe('a Player file', () => {
  it('is read whole', () => {
    expect(readPlayer(JSON.stringify(EVERYTHING), 'p.json').value).toEqual(EVERYTHING);
    expect(readPlayer('{"version":1,"name":"x"}', 'p.json')).toEqual({ value: { version: 1, name: 'x' }, faults: [] });
  });

  it('has a published schema with every key', () => {
    const schema = JSON.stringify(playerJsonSchema());
    for (const key of Object.keys(EVERYTHING)) expect(schema).toContain(`"${key}"`);
    expect(schema).toContain('"additionalProperties":false');
  });

  it.each<[string, object, string]>([
    ['another version', { version: 2 }, 'refused version version: 2 / 1'],
    ['no name', { name: undefined }, 'refused missing name: nothing / a text'],
    [
      'an unknown key',
      { favourite: 1 },
      'refused unknown-key favourite: the key "favourite" / a key of the published shape',
    ],
    ['a wrong type', { handicapIndex: 'scratch' }, 'refused wrong-type handicapIndex: "scratch" / a number'],
    ['a figure out of range', { handicapIndex: 99 }, 'refused out-of-range handicapIndex: 99 / at most 54'],
    ['a figure that is not one', { handicapIndex: Number.NaN }, 'refused wrong-type handicapIndex: null / a number'],
    [
      'an unknown lie',
      patterns({ lie: 'divot' }),
      'refused unknown-value patterns[0].lie: "divot" / tee, fairway, rough, bunker, recovery, penalty',
    ],
    [
      'no parts',
      patterns({ components: [] }),
      'refused out-of-range patterns[0].components: 0 entries / at least 1 entries',
    ],
    [
      'an impossible correlation',
      patterns({ components: [{ ...part, corr: 1.5 }] }),
      'refused out-of-range patterns[0].components[0].corr: 1.5 / at most 0.999',
    ],
    [
      'weights that do not sum to 1',
      patterns({ components: [{ ...part, weight: 0.4 }] }),
      'refused weights patterns[0].components: weights that sum to 0.4 / weights that sum to 1',
    ],
    [
      'a pattern twice',
      patterns({}, {}),
      'refused twice patterns[1]: 7i full a second time / one pattern for a club, swing and lie',
    ],
    [
      'a putting table that turns back',
      {
        putting: [
          { distanceM: 3, strokes: 1 },
          { distanceM: 2, strokes: 1 },
        ],
      },
      'refused not-rising putting[1].distanceM: 2 / distances that rise from row to row',
    ],
    ['putting of neither kind', { putting: 7 }, 'refused wrong-type putting: 7 / a list or an object'],
    [
      'a fault within one kind of putting',
      { putting: { sdAngleDeg: 1, sdDistance: 9, pastM: 0.3, captureM: 1 } },
      'refused out-of-range putting.sdDistance: 9 / at most 0.6',
    ],
    [
      'a club twice',
      { clubs: [{ name: '7i' }, { name: '7i' }] },
      'refused twice clubs[1]: 7i a second time / a club once',
    ],
    [
      'too many clubs',
      { clubs: Array.from({ length: 41 }, (_, i) => ({ name: `c${i}` })) },
      'refused out-of-range clubs: 41 entries / at most 40 entries',
    ],
  ])('refuses %s', (_, change, expected) => {
    expect(faultsOf(change)).toContain(expected);
    expect(readPlayer(JSON.stringify({ ...EVERYTHING, ...change }), 'p.json').value).toBeUndefined();
  });

  it('notes that stated and fitted patterns stand side by side', () => {
    expect(faultsOf({})).toEqual(['note stated-and-fitted patterns: 1 stated and 1 fitted patterns / one kind']);
  });

  it('is refused in one line a fault, and in few lines at most', () => {
    const clubs = Array.from({ length: 40 }, () => ({ name: 5, loft: 1, claim: 2 }));
    const { faults } = readPlayer(JSON.stringify({ ...EVERYTHING, clubs }), 'p.json');
    expect(faults).toHaveLength(41);
    for (const fault of faults) expect(wordFault(fault)).not.toContain('\n');
    expect(readPlayer('[]', 'p.json').faults.map((f) => f.code)).toEqual(['wrong-type']);
    expect(readPlayer('{"version":1,', 'p.json').faults.map((f) => f.code)).toEqual(['not-json']);
  });
});
