import type { FittedPatterns, Profile, Session, StoredRecord, StoredShot } from '@leeway/contract';
import { type ClubInBag, clubKey, isFullSwing, isStated, onCoursePrior, type PlayerFile } from '@leeway/engine';
import type { KeptBall } from './fitShots.ts';
import { current, get, type Kept, type Store } from '@leeway/store';

/** What is kept of a player that a plan is made from. */
export interface StoredPlayer {
  readonly profile: Kept<StoredRecord<'profile'>>;
  /** The newest patterns, or those asked for. */
  readonly fitted?: Kept<StoredRecord<'fitted'>>;
  /** Both as one Player file, as `leeway carries --patterns` writes it. */
  readonly file: PlayerFile;
}

/** A player by id; undefined when there is no profile that stands, or not the patterns asked for. */
export async function storedPlayer(store: Store, owner: string, fittedId?: string): Promise<StoredPlayer | undefined> {
  const profile = (await current(store, { owner, kind: 'profile' })).at(-1);
  const fitted =
    fittedId === undefined
      ? (await current(store, { owner, kind: 'fitted' })).at(-1)
      : await get(store, owner, fittedId);
  if (profile === undefined || (fittedId !== undefined && fitted?.kind !== 'fitted')) return undefined;
  if (fitted === undefined) return { profile, file: playerFileOf(profile.body) };
  const patterns = fitted as Kept<StoredRecord<'fitted'>>;
  return { profile, fitted: patterns, file: playerFileOf(profile.body, patterns.body) };
}

/** A profile and patterns as one Player file: clubs that were only hit join the bag, and what the course adds stands in it. */
export function playerFileOf(profile: Profile, fitted?: FittedPatterns): PlayerFile {
  const { minor: _minor, paceM: _pace, archived: _archived, sparedSince: _spared, ...known } = profile;
  const bare: PlayerFile = { version: 1, ...known };
  if (fitted === undefined) return bare;
  const file: PlayerFile = { ...bare, patterns: fitted.patterns };
  if (isStated(file)) return file;
  const clubs: ClubInBag[] = [...(known.clubs ?? [])];
  const byCarry = fitted.patterns.toSorted((a, b) => (b.fit?.carryM ?? 0) - (a.fit?.carryM ?? 0));
  for (const { club } of [...byCarry.filter(({ swing }) => isFullSwing(swing)), ...byCarry])
    if (!clubs.some(({ name }) => clubKey(name) === clubKey(club))) clubs.push({ name: club });
  return { ...file, onCourse: known.onCourse ?? onCoursePrior(bare), clubs };
}

/** A stored shot as the fit takes it: what its row does not tell of the day, its session may. */
export const ballOf = ({ club, swing, carryM, sideM, readings = {} }: StoredShot, session?: Session): KeptBall => ({
  club,
  swing,
  carryM,
  ...(sideM === undefined ? {} : { sideM }),
  readings: { ...(session === undefined ? {} : toldBy(session)), ...readings },
});

/** What a session tells of all its shots, as columns of theirs would. */
function toldBy({ date, day = {}, bearingDeg, altitudeM, ball, lineWind }: Session): KeptBall['readings'] {
  // only the wind's angle to the line moves a ball, so a line of unknown bearing may stand for north
  const line = bearingDeg ?? (lineWind === undefined ? undefined : 0);
  const told = {
    date,
    temperature: day.temperatureC,
    'wind speed': lineWind?.speedMps ?? day.windMps,
    'wind from': lineWind === undefined ? day.windFromDeg : ((line ?? 0) + lineWind.fromDeg) % 360,
    bearing: line,
    altitude: altitudeM,
    ball,
  };
  return Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
}
