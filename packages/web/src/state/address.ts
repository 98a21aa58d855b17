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

/** What the address leaves open is as it was `liked` last. */
export function wantedIn(search: string, liked: Pick<Wanted, 'units' | 'light'>): Wanted {
  const asked = new URLSearchParams(search);
  const named = (key: 'ground' | 'hole' | 'player') => {
    const value = asked.get(key);
    return value === null ? {} : { [key]: value };
  };
  return {
    ...named('ground'),
    ...named('hole'),
    ...named('player'),
    units: unitsOf(asked.get('units')) ?? liked.units,
    light: lightOf(asked.get('light')) ?? liked.light,
  };
}

const unitsOf = (text: string | null): Units | undefined => (text === 'm' || text === 'yd' ? text : undefined);
const lightOf = (text: string | null): Light | undefined => (text === 'sun' || text === 'paper' ? text : undefined);

/** The address that opens the same page again. */
export function addressOf({ ground, hole, player }: Open, units: Units, light: Light): string {
  const asked = new URLSearchParams({ ground: ground.id, hole, player: player.id });
  if (units !== 'yd') asked.set('units', units);
  if (light !== 'paper') asked.set('light', light);
  return `/?${asked.toString()}`;
}
