import { prepareHole } from '@leeway/web';
import type { StockedShelf } from './shelf.ts';

/** The shelf with its opening hole worked out beforehand, in the folder of the built page; the shelf as it is when that fails, which `tell` is told. */
export async function withOpeningHole(
  stocked: StockedShelf,
  page: string,
  tell: (line: string) => void,
): Promise<StockedShelf> {
  const { shelf, sent } = stocked;
  const { opening } = shelf;
  const ground = shelf.grounds.find(({ id }) => id === opening.ground);
  const player = shelf.players.find(({ id }) => id === opening.player);
  if (ground === undefined || player === undefined) return stocked;
  try {
    const fetched = (url: string) => Promise.resolve<unknown>(JSON.parse(sent.get(url.split('/').at(-1) ?? '') ?? ''));
    const url = await prepareHole(page, { ground, hole: opening.hole, player }, fetched, tell);
    const entry = { hole: opening.hole, player: player.id, url };
    const grounds = shelf.grounds.map((g) => (g === ground ? { ...g, prepared: [...g.prepared, entry] } : g));
    return { ...stocked, shelf: { ...shelf, grounds } };
  } catch (error) {
    tell(`hole ${opening.hole} could not be worked out: ${error instanceof Error ? error.message : String(error)}`);
    return stocked;
  }
}
