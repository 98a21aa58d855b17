import type { Units } from '@leeway/engine';
import type { Light, Open } from './open.ts';

/** What a page's address asks for: `?ground=…&hole=7&player=…&units=m&light=sun`. Whatever it leaves out is the usual. */
export interface Wanted {
  readonly ground?: string;
  readonly hole?: string;
  readonly player?: string;
  readonly units: Units;
  readonly light: Light;
}

export function wantedIn(search: string): Wanted {
  const asked = new URLSearchParams(search);
  const named = (key: 'ground' | 'hole' | 'player') => {
    const value = asked.get(key);
    return value === null ? {} : { [key]: value };
  };
  return {
    ...named('ground'),
    ...named('hole'),
    ...named('player'),
    units: asked.get('units') === 'm' ? 'm' : 'yd',
    light: asked.get('light') === 'sun' ? 'sun' : 'paper',
  };
}

/** The address that opens the same page again. */
export function addressOf({ ground, hole, player }: Open, units: Units, light: Light): string {
  const asked = new URLSearchParams({ ground: ground.id, hole, player: player.id });
  if (units !== 'yd') asked.set('units', units);
  if (light !== 'paper') asked.set('light', light);
  return `?${asked.toString()}`;
}
