import type { Made, Spot } from './made.ts';

export const box = (w: number, s: number, e: number, n: number): Spot[] => [
  [w, s],
  [e, s],
  [e, n],
  [w, n],
];

const round = ([e, n]: Spot, halfWidth: number, halfDepth: number): Spot[] =>
  Array.from({ length: 16 }, (_, i) => [
    e + halfWidth * Math.cos((i * Math.PI) / 8),
    n + halfDepth * Math.sin((i * Math.PI) / 8),
  ]);

export const area = (id: string, tags: Made['tags'], spots: readonly Spot[], inner?: Made['inner']): Made => ({
  id,
  tags,
  kind: 'area',
  spots,
  ...(inner ? { inner } : {}),
});
export const line = (id: string, tags: Made['tags'], ...spots: Spot[]): Made => ({ id, tags, kind: 'line', spots });
export const point = (id: string, tags: Made['tags'], spot: Spot): Made => ({ id, tags, kind: 'point', spots: [spot] });

/** Three holes of a made-up course, mapped without a fault: a par 4 north, a par 3 to an island green, a par 4 back south. */
export const TOLVANE: readonly Made[] = [
  area('way/1', { leisure: 'golf_course', name: 'Tolvane & Common' }, box(-150, -250, 200, 420)),
  line('way/11', { golf: 'hole', ref: '1', par: '4', name: 'Long Acre' }, [0, 0], [10, 200], [0, 350]),
  line('way/12', { golf: 'hole', ref: '2', name: 'Island (Par 3)' }, [80, 340], [85, 190]),
  line('way/13', { golf: 'hole', ref: '3', par: '4' }, [60, 150], [70, -180]),
  area('way/21', { golf: 'tee' }, box(-5, -6, 5, 6)),
  area('way/22', { golf: 'tee', ref: '2' }, box(75, 335, 85, 345)),
  area('way/23', { golf: 'tee' }, box(55, 143, 65, 156)),
  point('node/24', { golf: 'tee', ref: '1' }, [0, 1]),
  area('way/31', { golf: 'green', natural: 'grass' }, round([0, 350], 12, 15)),
  area('way/32', { golf: 'green' }, round([85, 190], 11, 10)),
  area('way/33', { golf: 'green' }, round([70, -180], 13, 12)),
  point('node/34', { golf: 'pin', ref: '1' }, [3, 354]),
  point('node/35', { golf: 'pin' }, [66, -178]),
  area('way/41', { golf: 'fairway' }, box(-20, 60, 22, 200)),
  area('way/42', { golf: 'fairway' }, box(-18, 212, 20, 325)),
  area('way/43', { golf: 'fairway' }, box(45, -150, 85, 60)),
  area('way/51', { golf: 'bunker', natural: 'sand' }, round([20, 340], 5, 6)),
  area('way/52', { natural: 'sand' }, round([91, 190], 2, 3)),
  area('way/61', { golf: 'rough' }, box(-60, -20, 40, 400)),
  area('way/71', { golf: 'lateral_water_hazard', natural: 'water', name: 'Tolvane Mere' }, box(62, 168, 112, 220)),
  area('way/72', { golf: 'water_hazard' }, box(30, 10, 52, 40)),
  line('way/73', { waterway: 'stream', name: 'Tolvane Brook' }, [-70, 206], [45, 206]),
  area('relation/81', { natural: 'wood' }, box(-130, 40, -62, 300), [box(-110, 100, -90, 140)]),
  point('node/82', { natural: 'tree' }, [26, 260]),
  line('way/83', { natural: 'tree_row' }, [40, 240], [40, 320]),
  line('way/91', { highway: 'residential', name: 'Mill Lane' }, [-140, 410], [190, 410]),
  line('way/92', { golf: 'cartpath', highway: 'service' }, [-30, -10], [-30, 380]),
  area('way/93', { building: 'yes' }, box(-50, -15, -40, -5)),
  area('way/95', { golf: 'out_of_bounds' }, box(115, 230, 190, 400)),
];

/** The made-up course with some features replaced, taken out (`undefined`) or added. */
export function tolvaneWith(changes: { readonly [id: string]: Made | undefined } = {}, ...added: Made[]): Made[] {
  return [...TOLVANE.flatMap((m) => (m.id in changes ? (changes[m.id] ?? []) : [m])), ...added];
}
