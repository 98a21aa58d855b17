import type { FromAbove, Pitched } from '@leeway/chart';
import type { LadderData } from '@leeway/contract';
import {
  clubKey,
  type Difference,
  differenceOfMeans,
  type NormalPart,
  type PlayerFile,
  type PlayerModel,
  swingKey,
  type Units,
} from '@leeway/engine';
import type { Behind } from '../asks.ts';
import { behind } from '../behind.ts';

/** A ball of a club and swing, told as a mishit or not. */
export type SeenBall = Behind['balls'][number];

interface Option {
  readonly club: string;
  readonly swing: string;
}

/** The balls of a club and swing, each told as a mishit when it was called one or the fitted pattern makes it one. */
export const seenBalls = (
  balls: LadderData['balls'],
  model: PlayerModel | undefined,
  option: Option,
): readonly SeenBall[] =>
  model === undefined
    ? balls
        .filter((b) => clubKey(b.club) === clubKey(option.club) && swingKey(b.swing) === swingKey(option.swing))
        .map(({ mishit, ...ball }) => ({ ...ball, mishit: mishit === true }))
    : behind(balls, model, option).balls;

/** The fitted pattern of a club and swing as it was measured, without what the course adds. */
export const partsOfSwing = (
  file: PlayerFile | undefined,
  { club, swing }: Option,
): readonly NormalPart[] | undefined =>
  file?.patterns?.find((p) => clubKey(p.club) === clubKey(club) && swingKey(p.swing) === swingKey(swing))?.components;

const pitched = (balls: readonly SeenBall[]): readonly Pitched[] =>
  balls.flatMap(({ carryM, sideM, mishit }) =>
    sideM === undefined || Math.abs(sideM) > carryM
      ? []
      : [{ alongM: Math.sqrt(carryM ** 2 - sideM ** 2), acrossM: sideM, mishit }],
  );

/** What is drawn: all balls, or those of the later day with those of the earlier one as crosses. */
export function drawnFromAbove(
  title: string,
  units: Units,
  balls: readonly SeenBall[],
  parts: readonly NormalPart[] | undefined,
  days: Days | undefined,
): FromAbove {
  const on = (date: string): readonly Pitched[] => pitched(balls.filter((b) => b.date === date));
  const drawn = days === undefined ? { balls: pitched(balls) } : { balls: on(days.after), before: on(days.before) };
  return { title, units, ...drawn, ...(parts === undefined ? {} : { parts }) };
}

export interface Days {
  readonly before: string;
  readonly after: string;
}

/** The days on which balls were hit, the earliest first. */
export const daysOf = (balls: readonly SeenBall[]): readonly string[] =>
  [...new Set(balls.flatMap(({ date }) => (date === undefined ? [] : [date])))].toSorted();

/** What changed between two days: of the good strikes how far and where to, and how many were mishit. Differences are absent where a day has too few. */
export interface Change {
  readonly before: DayCount;
  readonly after: DayCount;
  readonly carryM?: Difference;
  readonly sideM?: Difference;
}
export interface DayCount {
  readonly date: string;
  readonly balls: number;
  readonly mishits: number;
  readonly goodCarryM?: number;
}

export function changeBetween(balls: readonly SeenBall[], { before, after }: Days): Change {
  const good = (date: string): readonly SeenBall[] => balls.filter((b) => b.date === date && !b.mishit);
  const carries = (date: string): number[] => good(date).map((b) => b.carryM);
  const sides = (date: string): number[] => good(date).flatMap((b) => (b.sideM === undefined ? [] : [b.sideM]));
  const count = (date: string): DayCount => {
    const of = balls.filter((b) => b.date === date);
    const own = carries(date);
    return {
      date,
      balls: of.length,
      mishits: of.filter((b) => b.mishit).length,
      ...(own.length === 0 ? {} : { goodCarryM: own.reduce((sum, m) => sum + m, 0) / own.length }),
    };
  };
  const [carryM, sideM] = [
    differenceOfMeans(carries(before), carries(after)),
    differenceOfMeans(sides(before), sides(after)),
  ];
  return {
    before: count(before),
    after: count(after),
    ...(carryM === undefined ? {} : { carryM }),
    ...(sideM === undefined ? {} : { sideM }),
  };
}
