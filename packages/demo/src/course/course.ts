import type { DrawnHole } from './drawn.ts';
import { BURNFOOT, GLEBE_ROAD, SANDHOLLOW } from './holes1to3.ts';
import { LONG_ACRE, SLUICE, WALL_END } from './holes4to6.ts';
import { FAR_MARRAM, SEAWARD, SHORE_WALK } from './holes8to10.ts';
import { PINFOLD, SECOND_CROSSING, THE_EYOT } from './holes11to13.ts';
import { NARROW_GAT, PADDOCK, PLANTATION } from './holes14to16.ts';
import { HOMEBURN, LONGSHOT } from './holes17to18.ts';
import { LINKS } from './links.ts';
import { SALTINGS } from './saltings.ts';

/** Tolvane Links: out along the road to the far end, and home along the shore. Par 71. */
export const TOLVANE: readonly DrawnHole[] = [
  LINKS,
  BURNFOOT,
  GLEBE_ROAD,
  SANDHOLLOW,
  SLUICE,
  LONG_ACRE,
  WALL_END,
  SALTINGS,
  FAR_MARRAM,
  SHORE_WALK,
  SEAWARD,
  THE_EYOT,
  PINFOLD,
  SECOND_CROSSING,
  NARROW_GAT,
  PLANTATION,
  PADDOCK,
  LONGSHOT,
  HOMEBURN,
];
