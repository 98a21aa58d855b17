import type { GreenZone, Units } from '@leeway/engine';
import type { Pin } from './asks.ts';

const MPS_PER_MPH = 0.44704;
const DEPTHS = { f: 'front', m: 'middle', b: 'back' } as const;
const SIDES = { l: 'left', m: 'middle', r: 'right' } as const;
const PACES = /^(\d+(?:[.,]\d+)?)\s*[,; ]\s*(\d+(?:[.,]\d+)?)\s*([lr])$/;

/**
 * A flag as it is typed from a pin sheet: `f`, `m`, `b` for front, middle and back, with `l`, `m`, `r` for the side (`bl`, "back left"; a side alone is level with
 * the middle), or paces on from the front and in from a side (`16,7R`). `'map'` when nothing is typed, undefined when it cannot be read.
 */
export function pinOf(text: string): Pin | 'map' | undefined {
  const plain = text.trim().toLowerCase();
  if (plain === '') return 'map';
  const [, on, inside, from] = PACES.exec(plain) ?? [];
  if (on !== undefined && inside !== undefined)
    return { kind: 'paces', on: number(on), in: number(inside), side: from === 'l' ? 'L' : 'R' };
  const zone = zoneIn(plain.replace(/[\s-]+/g, ' '));
  return zone && { kind: 'zone', zone };
}

function zoneIn(plain: string): GreenZone | undefined {
  const letters = plain
    .split(' ')
    .map((word) => LETTERS[word] ?? word)
    .join('');
  const [found, depth, side] = /^([fmb])?([lmr])?$/.exec(letters) ?? [];
  if (found === undefined) return undefined;
  return {
    depth: depth === undefined ? 'middle' : DEPTHS[depth as keyof typeof DEPTHS],
    side: side === undefined ? 'middle' : SIDES[side as keyof typeof SIDES],
  };
}

const LETTERS: { readonly [word: string]: string } = { front: 'f', middle: 'm', back: 'b', left: 'l', right: 'r' };

const number = (text: string): number => Number(text.replace(',', '.'));

/** A wind's speed in m/s of what is typed in mph or m/s; undefined when it cannot be read. Nothing is calm. */
export function speedOf(text: string, units: Units): number | undefined {
  const plain = text.trim();
  if (plain === '' || plain.toLowerCase() === 'calm') return 0;
  const typed = number(plain);
  const speed = units === 'yd' ? typed * MPS_PER_MPH : typed;
  return /^\d+(?:[.,]\d+)?$/.test(plain) && speed <= 60 ? speed : undefined;
}

const POINTS = ['n', 'nne', 'ne', 'ene', 'e', 'ese', 'se', 'sse', 's', 'ssw', 'sw', 'wsw', 'w', 'wnw', 'nw', 'nnw'];

/** Where a wind comes from, in degrees, of degrees or a point of the compass; undefined when it cannot be read. Nothing is north. */
export function fromOf(text: string): number | undefined {
  const plain = text.trim().toLowerCase().replace('°', '');
  if (plain === '') return 0;
  const point = POINTS.indexOf(plain);
  if (point >= 0) return point * 22.5;
  return /^\d{1,3}$/.test(plain) && Number(plain) <= 360 ? Number(plain) % 360 : undefined;
}
