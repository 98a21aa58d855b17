import { clubKey } from './club.ts';
import type { PlayerFile } from './file.ts';
import { claimedCarry, type KnownCarry } from './ladder.ts';

/** What the file knows of carries: fitted ones with their doubt, and claims. */
export function knownCarries(file: PlayerFile): readonly KnownCarry[] {
  const lofts = new Map((file.clubs ?? []).map((c) => [clubKey(c.name), c.loftDeg]));
  const fitted = (file.patterns ?? []).flatMap((p): readonly KnownCarry[] => {
    if (p.fit === undefined) return [];
    const loftDeg = lofts.get(clubKey(p.club));
    const seLog = Math.max(0.002, p.fit.seCarryM / p.fit.carryM);
    return [
      { club: p.club, swing: p.swing, carryM: p.fit.carryM, seLog, ...(loftDeg === undefined ? {} : { loftDeg }) },
    ];
  });
  return [...fitted, ...claimsOf(file)];
}

/** Carries that the file claims from memory. */
export function claimsOf(file: PlayerFile): readonly KnownCarry[] {
  return (file.clubs ?? []).flatMap((club) => {
    const claims: KnownCarry[] = [];
    if (club.claimedCarryM !== undefined)
      claims.push(claimedCarry(club.name, 'full', club.claimedCarryM, club.loftDeg));
    for (const s of club.swings ?? [])
      if (typeof s !== 'string' && s.claimedCarryM !== undefined)
        claims.push(claimedCarry(club.name, s.name, s.claimedCarryM, club.loftDeg));
    return claims;
  });
}
