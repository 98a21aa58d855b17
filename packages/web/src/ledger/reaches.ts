import { type PlayerFile, playerModel } from '@leeway/engine';
import type { Reach } from './guessed.ts';

/** Good strikes run on by about this share of their carry: our guess for a club that is not typed. */
const RUN_SHARE = 0.05;

/** How far each club goes with a full swing, the longest first. */
export const reachesOf = (file: PlayerFile): readonly Reach[] =>
  playerModel(file)
    .options.flatMap(({ club, full, byLie }) => {
      const good = (byLie.tee ?? byLie.fairway)?.parts[0];
      return full && good !== undefined ? [{ club, toM: good.alongM * (1 + RUN_SHARE) }] : [];
    })
    .toSorted((a, b) => b.toM - a.toM);
