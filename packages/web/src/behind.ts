import type { SentBall } from '@leeway/contract';
import { clubKey, mishitChance, type PlayerModel, swingKey } from '@leeway/engine';
import type { Behind, BehindAsk } from './asks.ts';

/** The recorded balls of a club and swing, as their rows give them, each told as a mishit when it was called one, or the pattern makes it more likely one than not. */
export function behind(
  balls: readonly (SentBall & { readonly mishit?: true })[],
  player: PlayerModel,
  { club, swing }: BehindAsk,
): Behind {
  const [wantedClub, wantedSwing] = [clubKey(club), swingKey(swing)];
  const wanted = (of: { readonly club: string; readonly swing: string }): boolean =>
    clubKey(of.club) === wantedClub && swingKey(of.swing) === wantedSwing;
  const { tee, fairway } = player.options.find(wanted)?.byLie ?? {};
  const pattern = tee ?? fairway;
  return {
    balls: balls.filter(wanted).map(({ date, carryM, sideM, mishit }) => ({
      ...(date === undefined ? {} : { date }),
      carryM,
      ...(sideM === undefined ? {} : { sideM }),
      mishit: mishit ?? (pattern !== undefined && mishitChance(pattern.parts, carryM, sideM) > 0.5),
    })),
  };
}
