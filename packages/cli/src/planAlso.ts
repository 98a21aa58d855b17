import type { Fault, Read } from '@leeway/contract';
import {
  aimedAt,
  type BallState,
  clubKey,
  type HoleGround,
  type HoleSolution,
  type Option,
  optionWords,
  type PlanePoint,
  type PlayerModel,
  type Stroke,
  swingKey,
} from '@leeway/engine';
import { Usage } from './command.ts';
import { parsePlace, placeOnHole } from './planPlace.ts';

/** A club and swing, and the place that its good strike is to go at. */
export interface NamedStroke {
  readonly option: Option;
  readonly place: PlanePoint;
}

/** Named strokes aimed so that the good strike's mean goes at its place today. */
export const aimedStrokes = (
  named: readonly NamedStroke[],
  solution: HoleSolution,
  from: BallState,
): readonly Stroke[] =>
  named.flatMap(({ option, place }) => {
    const stroke = aimedAt(solution, from, option, place);
    return stroke === undefined ? [] : [stroke];
  });

/**
 * The strokes that `--also CLUB[, SWING]@PLACE` names, for a ball at `from`: the club and swing in any of their spellings. A club, swing or
 * place that is not there is a fault.
 */
export function namedStrokes(
  texts: readonly string[],
  player: PlayerModel,
  ground: HoleGround,
  from: BallState,
): Read<readonly NamedStroke[]> {
  const strokes: NamedStroke[] = [];
  const faults: Fault[] = [];
  for (const text of texts) {
    const at = text.lastIndexOf('@');
    if (at < 1) throw new Usage(`--also: found "${text}"; expected CLUB[, SWING]@LON,LAT or CLUB[, SWING]@16,7R`);
    const found = namedStroke(text.slice(0, at).trim(), text.slice(at + 1), player, ground, from);
    if ('code' in found) faults.push(found);
    else strokes.push(found);
  }
  return faults.length > 0 ? { faults } : { value: strokes, faults };
}

const refused = (code: string, at: string, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file: '--also',
  at,
  found,
  expected,
});

function namedStroke(
  name: string,
  placeText: string,
  player: PlayerModel,
  ground: HoleGround,
  from: BallState,
): NamedStroke | Fault {
  const place = placeOnHole(ground, parsePlace('also', placeText));
  if (place === undefined) return refused('off-the-green', name, placeText, 'paces that lie on the green');
  const option = optionNamed(name, player);
  if ('code' in option) return option;
  if (option.byLie[from.lie] === undefined) {
    return refused('not-from-this-lie', name, `a ${from.lie} lie`, 'a lie that this club and swing are played from');
  }
  return { option, place };
}

function optionNamed(name: string, player: PlayerModel): Option | Fault {
  const all = [...player.options, ...player.learnable];
  const comma = name.lastIndexOf(',');
  const whole = all.filter((o) => clubKey(o.club) === clubKey(name));
  const club = whole.length > 0 || comma < 0 ? name : name.slice(0, comma).trim();
  const swing = whole.length > 0 || comma < 0 ? 'full' : name.slice(comma + 1).trim();
  const ofClub = all.filter((o) => clubKey(o.club) === clubKey(club));
  if (ofClub.length === 0) {
    const clubs = [...new Set(all.map((o) => o.club))].join(', ');
    return refused('unknown-club', name, club, `one of ${clubs}`);
  }
  const option =
    ofClub.find((o) => swingKey(o.swing) === swingKey(swing)) ??
    (swing === 'full' ? (ofClub.find((o) => o.full) ?? (ofClub.length === 1 ? ofClub[0] : undefined)) : undefined);
  return option ?? refused('unknown-swing', name, swing, `one of ${ofClub.map((o) => optionWords(o)).join('; ')}`);
}
