import { describe, expect, it } from 'vitest';
import { clubKey, isFullSwing, readClub, swingKey } from './club.ts';

describe('the names of clubs', () => {
  it.each([
    ['iron 7', ['7i', '7 Iron', 'I7', '7-iron', '7I', 'iron 7', 'Fe7', 'Eisen 7', 'Seven iron', '7 IRON ', '7_iron']],
    ['driver', ['Driver', 'D', 'DR', '1w', '1 Wood', 'drv']],
    ['wood 3', ['3W', '3 wood', '3-wood', 'W3', 'fairway wood 3', '3 fairway wood', 'Wood 3']],
    ['hybrid 4', ['4h', '4 Hybrid', 'H4', 'hyb 4', '4-utility']],
    ['wedge pitching', ['PW', 'P', 'Pitching Wedge', 'pitching', 'p-wedge']],
    ['wedge gap', ['GW', 'AW', 'Gap wedge', 'approach wedge']],
    ['wedge sand', ['SW', 'Sand Wedge', 'S']],
    ['wedge lob', ['LW', 'Lob wedge']],
    ['wedge 52', ['52', '52°', '52 deg', '52 degree wedge', 'Wedge 52', '52 wedge', 'GW 52', '52w', '52d']],
    ['putter', ['Putter', 'PT']],
  ])('%s is one club in every spelling', (key, spellings) => {
    expect(spellings.map((name) => [name, clubKey(name)])).toEqual(spellings.map((name) => [name, key]));
  });

  it('leaves an unknown name as it is', () => {
    const names = ['chipper', 'Old Faithful', '77', '12i', 'iron', '7', '', '7 7 iron'];
    expect(names.filter((name) => readClub(name) !== undefined)).toEqual([]);
    expect(clubKey('  My  Club ')).toBe('my club');
  });
});

describe('the names of swings', () => {
  it('know a full swing and the common in-between ones', () => {
    expect(['full', 'Full', 'full swing', '', '100%', 'normal'].every(isFullSwing)).toBe(true);
    for (const name of ['3/4', 'three-quarter', 'Three quarter swing', '75%', '3q'])
      expect(swingKey(name)).toBe('three-quarter');
    for (const name of ['half', '1/2', '50 %', 'Half swing']) expect(swingKey(name)).toBe('half');
    expect(swingKey('Knock-down')).toBe('knock down');
  });
});
