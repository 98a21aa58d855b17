import { readFileSync } from 'node:fs';
import { type SentBall, sentHole, type ShelvedGround, type ShelvedPlayer } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import type { NormalPart, PlayerFile } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import type { Fetch } from '../fetched.ts';

const part = (weight: number, alongM: number, sdAlongM: number, sdAcrossM: number): NormalPart => ({
  weight,
  alongM,
  acrossM: 0,
  sdAlongM,
  sdAcrossM,
  corr: 0,
});
const pattern = (club: string, carryM: number) => ({
  club,
  swing: 'full',
  components: [part(0.9, carryM, 0.05 * carryM, 0.06 * carryM), part(0.1, 0.7 * carryM, 0.15 * carryM, 0.09 * carryM)],
});

/** A player of four clubs, so that a hole is soon solved. */
const PLAYER: PlayerFile = {
  version: 1,
  name: 'Ina Test',
  hand: 'right',
  patterns: [pattern('5-wood', 180), pattern('7-iron', 140), pattern('PW', 85), pattern('58°', 45)],
};

const BALLS: readonly SentBall[] = [
  { club: '7 Iron', swing: 'Full', date: '2026-05-01', carryM: 141, sideM: 3 },
  { club: '7i', swing: 'full', carryM: 95 },
  { club: 'PW', swing: 'full', carryM: 86, sideM: -4 },
];

/** The shelf that the tests open: a hole of the made-up course and that player. */
export const GROUND: ShelvedGround = {
  id: '0000000000000001',
  course: 'Tolvane Links',
  holes: [{ hole: '5', par: 4, url: 'hole' }],
  prepared: [],
};
export const INA: ShelvedPlayer = { id: '0000000000000002', name: PLAYER.name, url: 'player', ballUrls: ['balls'] };

/** What the server would send. */
export function sending(): Fetch {
  const ground = readGround(readFileSync(DEMO.ground, 'utf8'), 'demo', { hole: '5' }).value;
  const [hole] = ground?.holes ?? [];
  if (hole === undefined) throw new Error('the demo has no hole 5');
  const sent = sentHole({ course: 'Tolvane Links' }, hole);
  const files: { readonly [url: string]: unknown } = { hole: sent, player: PLAYER, balls: BALLS };
  return (url) => Promise.resolve(JSON.parse(JSON.stringify(files[url])));
}
