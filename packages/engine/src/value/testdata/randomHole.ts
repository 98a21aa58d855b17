import type { Area, HoleGround } from '../../ground/hole.ts';
import { randomFrom } from '../../math/random.ts';
import { area, type Corner, hole, round } from './toy.ts';

/** Made-up holes of any shape, the same for the same seed: 120 to 500 m, bent or straight, with sand, trees, water of both colours and bounds by chance. */
export function randomHole(seed: number): HoleGround {
  const random = randomFrom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random.next();
  const lengthM = between(120, 500);
  const bendM = lengthM > 250 ? between(-60, 60) : 0;
  const flag: Corner = [between(-8, 8), lengthM];
  // the middle of the fairway at a share of the way
  const middle = (t: number): Corner => [flag[0] * t + bendM * 4 * t * (1 - t), lengthM * t];
  const strip = (fromT: number, toT: number, leftM: number, rightM: number): Corner[] => {
    const ts = Array.from({ length: 9 }, (_, i) => fromT + ((toT - fromT) * i) / 8);
    const side = (m: number): Corner[] => ts.map((t) => [middle(t)[0] + m, middle(t)[1]]);
    return [...side(leftM), ...side(rightM).toReversed()];
  };
  const areas: Area[] = [area('rough', strip(-0.1, 1.15, -110, 110), { id: 'ground' })];
  const half = between(12, 22);
  if (random.next() < 0.6) areas.push(area('recovery', strip(0.1, 0.9, -90, -half - between(8, 30)), { id: 'wood' }));
  if (lengthM > 200) areas.push(area('fairway', strip(0.3, 0.95, -half, half)));
  areas.push(area('green', round(flag[0] + between(-5, 5), flag[1] + between(-5, 5), between(9, 15))));
  for (let k = 0; k < 4; k++) {
    const turn = between(0, 2 * Math.PI);
    const away = between(16, 26);
    areas.push(
      area('bunker', round(flag[0] + away * Math.sin(turn), flag[1] + away * Math.cos(turn), between(3, 7)), {
        id: `sand ${k}`,
      }),
    );
  }
  if (random.next() < 0.6) {
    const t = between(0.45, 0.85);
    const [east, north] = middle(t);
    const pond = round(east + between(-40, 40), north, between(8, 24));
    areas.push(area('penalty', pond, { id: 'pond', red: random.next() < 0.5 }));
  }
  if (random.next() < 0.4) {
    areas.push(area('penalty', strip(0, 1.1, half + 12, half + 20), { id: 'brook', red: true }));
  }
  if (random.next() < 0.5) areas.push(area('out', strip(-0.1, 1.2, half + 25, 140), { id: 'out' }));
  const par = lengthM < 220 ? 3 : lengthM < 430 ? 4 : 5;
  return { ...hole(flag, areas), par, line: [0, 0.25, 0.5, 0.75, 1].map((t) => pointAt(middle(t))) };
}

const pointAt = ([eastM, northM]: Corner) => ({ eastM, northM });
