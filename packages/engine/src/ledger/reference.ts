import { clubKey, swingKey } from '../player/club.ts';
import type { PlayerFile } from '../player/file.ts';
import { isStated, playerModel } from '../player/model.ts';
import type { NormalPart, Option, Pattern, PlayerModel } from '../player/option.ts';
import { handicapIndexOf } from '../player/prior.ts';
import type { Lie } from '../quantity/lies.ts';
import { goodOf } from './goodStrike.ts';

/** Habits of execution: each is measured against what is usual at the player's own index. */
export const EXECUTION_HABITS = ['strike', 'direction', 'length', 'shortGame', 'putting'] as const;
export type ExecutionHabit = (typeof EXECUTION_HABITS)[number];

/** A player of the same index, of whom nothing else is known, with the same clubs and swings. */
export function usualPlayer(file: PlayerFile): PlayerModel {
  const swings = new Map<string, string[]>();
  for (const { club, swing, evidence } of playerModel(file).options) {
    if (evidence !== 'short game') swings.set(club, [...(swings.get(club) ?? []), swing]);
  }
  const { name, units, sex } = file;
  return playerModel({
    version: 1,
    name,
    handicapIndex: handicapIndexOf(file),
    ...(units === undefined ? {} : { units }),
    ...(sex === undefined ? {} : { sex }),
    clubs: [...swings].map(([club, of]) => ({
      ...((file.clubs ?? []).find((c) => clubKey(c.name) === clubKey(club)) ?? { name: club }),
      swings: of,
    })),
  });
}

/**
 * The player with one part of the game as it is usual at their index, all else their own: the share of mishits; the spread of directions and a straight mean;
 * the spread of lengths of good strikes (how far they go stays); chips, pitches and sand shots; putts. `undefined` where that part is the prior already.
 */
export function withUsual(file: PlayerFile, habit: ExecutionHabit): PlayerModel | undefined {
  const own = playerModel(file);
  if (habit === 'putting') {
    if (file.putting === undefined) return undefined;
    const { putting: _, ...rest } = file;
    const { putting, putter } = isStated(file) ? playerModel({ ...rest, patterns: [] }) : playerModel(rest);
    const { putter: __, ...without } = own;
    return { ...without, putting, ...(putter === undefined ? {} : { putter }) };
  }
  if (habit === 'shortGame') {
    if (file.shortGame === undefined || isStated(file)) return undefined;
    const { shortGame: _, ...rest } = file;
    return playerModel(rest);
  }
  const usual = usualPlayer(file);
  const options = own.options.map((option) => {
    const as = option.evidence === 'short game' ? undefined : sameOption(usual, option);
    return as === undefined ? option : { ...option, byLie: moved(option, as, habit) };
  });
  return { ...own, options };
}

const sameOption = (usual: PlayerModel, { club, swing }: Option): Option | undefined =>
  usual.options.find((o) => clubKey(o.club) === clubKey(club) && swingKey(o.swing) === swingKey(swing));

function moved(own: Option, usual: Option, habit: 'strike' | 'direction' | 'length'): Option['byLie'] {
  const byLie: { [L in Lie]?: Pattern } = {};
  for (const [lie, pattern] of Object.entries(own.byLie) as [Lie, Pattern][]) {
    const as = (usual.byLie[lie] ?? usual.byLie.fairway ?? usual.byLie.tee)?.parts;
    byLie[lie] = as === undefined ? pattern : { ...pattern, parts: MOVES[habit](pattern.parts, as) };
  }
  return byLie;
}

type Parts = readonly NormalPart[];

const MOVES: { readonly [H in 'strike' | 'direction' | 'length']: (own: Parts, usual: Parts) => Parts } = {
  strike: withMishitsOf,
  direction: (own, usual) => {
    const wider = angleOf(usual) / angleOf(own);
    const bias = (own[0]?.acrossM ?? 0) / (own[0]?.alongM ?? 1);
    return own.map((p) => ({ ...p, acrossM: p.acrossM - bias * p.alongM, sdAcrossM: p.sdAcrossM * wider }));
  },
  length: (own, usual) => {
    const wider = shareOf(usual) / shareOf(own);
    const isGood = goodOf(own);
    return own.map((p) => (isGood(p) ? { ...p, sdAlongM: p.sdAlongM * wider } : p));
  },
};

const angleOf = ([good]: Parts): number => (good === undefined ? 1 : good.sdAcrossM / good.alongM);
const shareOf = ([good]: Parts): number => (good === undefined ? 1 : good.sdAlongM / good.alongM);

const weightOf = (parts: Parts): number => parts.reduce((sum, p) => sum + p.weight, 0);

/** The usual share of mishits, of the player's own shape; of the usual one where the player has none. */
function withMishitsOf(own: Parts, usual: Parts): Parts {
  const [ownGood, usualGood] = [goodOf(own), goodOf(usual)];
  const good = own.filter(ownGood);
  const longer = (own[0]?.alongM ?? 0) / (usual[0]?.alongM ?? 1);
  const theirs = usual.filter((p) => !usualGood(p));
  const share = weightOf(theirs);
  const mine = own.filter((p) => !ownGood(p));
  const mishits =
    mine.length > 0
      ? mine
      : theirs.map((p) => ({
          ...p,
          alongM: p.alongM * longer,
          acrossM: p.acrossM * longer,
          sdAlongM: p.sdAlongM * longer,
          sdAcrossM: p.sdAcrossM * longer,
        }));
  const [goods, bads] = [weightOf(good), weightOf(mishits)];
  return [
    ...good.map((p) => ({ ...p, weight: (p.weight * (1 - share)) / goods })),
    ...mishits.map((p) => ({ ...p, weight: (p.weight * share) / bads })),
  ];
}
