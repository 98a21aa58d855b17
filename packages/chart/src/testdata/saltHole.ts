import { disc, frameAt, type HoleGround, type PlanePoint, type Polygon, type Surface } from '@leeway/engine';

const ring = (...corners: readonly (readonly [number, number])[]): Polygon => ({
  outer: corners.map(([eastM, northM]) => ({ eastM, northM })),
  inner: [],
});
const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });

const area = (id: string, surface: Surface, polygon: Polygon, name?: string) => ({
  id,
  surface,
  polygon,
  ...(name === undefined ? {} : { name }),
});

/** A short hole with every kind of ground, its green an island, a bunker astride the fairway's edge. */
export const SALT_HOLE: HoleGround = {
  hole: '3',
  name: 'Salt & <Pepper>',
  par: 3,
  parGuessed: false,
  frame: frameAt({ lon: -30, lat: 40 }),
  ball: at(0, 0),
  flag: at(6, 150),
  flagFrom: 'pin',
  line: [at(0, 0), at(6, 150)],
  areas: [
    area('rough', 'rough', ring([-60, 20], [-30, 25], [-28, 60], [-58, 66])),
    area('wood', 'recovery', ring([-70, 70], [-40, 66], [-38, 110], [-66, 118]), 'Long Wood'),
    area('thorn', 'recovery', disc(at(34, 60), 3)),
    area('fairway', 'fairway', ring([-14, 30], [12, 28], [18, 95], [-16, 98])),
    area('tee', 'tee', ring([-4, -5], [4, -5], [4, 5], [-4, 5])),
    area('bunker', 'bunker', ring([8, 60], [22, 58], [26, 74], [12, 78])),
    area('pond', 'penalty', ring([-30, 112], [40, 108], [46, 180], [-34, 186]), 'Salt Pond'),
    area('green', 'green', ring([-10, 134], [2, 128], [18, 134], [22, 150], [12, 164], [-4, 162], [-12, 150])),
    area('field', 'out', ring([52, -30], [120, -30], [120, 220], [58, 220])),
  ],
  cautions: [],
};
