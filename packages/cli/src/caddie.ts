import {
  DRIFT_M,
  evidenceWords,
  finishWords,
  fromWords,
  shotTitle,
  spotPlace,
  strokeWords,
  TIE_STROKES,
  type HoleDocument,
  type PlanDocument,
  type ShotDocument,
  type StrokeDocument,
} from '@leeway/contract';
import {
  capital,
  cautionWords,
  lengthWords,
  optionWords,
  printedNumber,
  strokesWords,
  wholeLength,
  YARD_M,
} from '@leeway/engine';
import { dayWords } from './dayWords.ts';
import type { Units } from './quantities.ts';

const CARE =
  'Nobody in range before you play; shout at once when a ball goes astray; off the course when lightning is about. The committee, its local rules and the Rules of Golf come first.';

/** A plan as a caddie would write it down. */
export function planNote(document: PlanDocument, units: Units): string {
  const { course, attribution, player, round, holes } = document;
  const lines = [
    `${course === undefined ? '' : `${course}. `}Plan for ${player.name}. ${dayWords(document.day, units)}${levelWords(holes)}`,
  ];
  if (document.rules !== undefined) lines.push(rulesWords(document.rules));
  if (round !== undefined) {
    lines.push(
      `${holes.length} holes, par ${round.par}: ${strokesWords(round.expectedStrokes)} strokes${sureWords(round.expectedStrokes, round.doubt)}.`,
    );
  }
  if (document.bag !== undefined) lines.push('', ...bagWords(document.bag));
  for (const hole of holes) lines.push('', ...holeNote(hole, units));
  lines.push('', CARE);
  if (attribution !== undefined) lines.push(attribution);
  return `${lines.join('\n')}\n`;
}

function bagWords({ clubs, carry, leave, expectedStrokes }: NonNullable<PlanDocument['bag']>): string[] {
  const worth = ({ club, worthStrokes }: (typeof clubs)[number]): string =>
    `${club} ${worthStrokes === null ? 'is needed' : strokesWords(Math.max(0, worthStrokes))}`;
  const idle = clubs.filter((c) => !c.earns).map((c) => c.club);
  return [
    `The bag: ${carry.join(', ')} and a putter, ${strokesWords(expectedStrokes)} strokes.${leave.length === 0 ? '' : ` Leave ${leave.join(', ')}.`}`,
    ...(idle.length === 0 ? [] : [`Earns nothing here while the others are carried: ${idle.join(', ')}.`]),
    `What each saves while the others are carried: ${clubs.map(worth).join(', ')}.`,
  ];
}

function rulesWords({ e5, lostInTrees, lostInRough }: NonNullable<PlanDocument['rules']>): string {
  const lost = (share: number | undefined, where: string): string[] =>
    share === undefined ? [] : [`${Math.round(100 * share)} in 100 balls in ${where} are taken as lost`];
  const said = [
    ...(e5 === true ? ['Local Rule E-5 is in force'] : []),
    ...lost(lostInTrees, 'trees'),
    ...lost(lostInRough, 'rough'),
  ];
  return `${said.join('; ')}.`;
}

const levelWords = (holes: PlanDocument['holes']): string =>
  holes.every((hole) => hole.heights === undefined) ? ' The ground is taken as level.' : '';

function holeNote(hole: HoleDocument, units: Units): string[] {
  const name = hole.name === undefined ? '' : `, ${hole.name}`;
  const par = `par ${hole.par}${hole.parGuessed === true ? ' (from its length)' : ''}`;
  const head = `Hole ${hole.hole}${name}, ${par}, ${lengthWords(hole.lengthM, units)}`;
  const lines = [
    `${head}: ${strokesWords(hole.expectedStrokes)} strokes${sureWords(hole.expectedStrokes, hole.doubt)}.`,
  ];
  if (hole.flag.from === 'green centre')
    lines.push('No flag is mapped: it is taken to stand in the middle of the green.');
  if (hole.greenTakenAsFlat === true) lines.push('The green is taken as flat.');
  if (!hole.solver.converged)
    lines.push('The solver stopped before its figures settled; take the second decimal lightly.');
  hole.shots.forEach((shot, i) => {
    lines.push('', ...shotNote(shot, units, shotTitle(i)));
  });
  if (hole.endsEarly !== undefined) lines.push(`The plan ends here: ${hole.endsEarly}.`);
  return lines;
}

/** One shot, in the order of a caddie's note: what and where, what it costs, how far, the chances, why, what else, how sure. */
export function shotNote(shot: ShotDocument, units: Units, title = 'This shot'): string[] {
  const dropped = shot.dropped === true ? ', after a drop' : '';
  return [
    `${title}: ${lengthWords(shot.toFlagM, units)} to the flag${fromWords(shot.lie)}${dropped}.`,
    `  ${capital(optionWords(shot.option))}. Spot ${spotPlace(shot, units)}.`,
    ...startWords(shot, units),
    `  ${strokesWords(shot.expectedStrokes)} strokes${plainWords(shot)}.`,
    `  ${distanceWords(shot, units)}`,
    ...flaggedWords(shot),
    `  Of 100 balls: ${chancesWords(shot.chances)}.`,
    ...scoresWords(shot),
    ...roomWords(shot, units),
    ...shot.reasons.map((reason) => `  ${reason}`),
    ...elseWords(shot, units),
    `  How sure: ${evidenceWords(shot)}${sureFourInFive(shot)}.${settleWords(shot)}`,
  ];
}

function startWords(shot: ShotDocument, units: Units): string[] {
  const driftM = shot.aim.rightOfFlagM - shot.spot.rightOfFlagM;
  const drift =
    Math.abs(driftM) < DRIFT_M
      ? ''
      : ` Start it ${lengthWords(Math.abs(driftM), units)} ${driftM < 0 ? 'left' : 'right'} of the spot; good strikes finish that much ${driftM < 0 ? 'right' : 'left'} of where they are pointed.`;
  const line = shot.startLine === undefined ? '' : ` Start line: ${shot.startLine}.`;
  return line + drift === '' ? [] : [`  ${(line + drift).trim()}`];
}

function plainWords(shot: ShotDocument): string {
  const plain = shot.atFlag ?? shot.middleOfFairway;
  if (plain === undefined) return '';
  const where = shot.atFlag === undefined ? 'down the middle of the fairway' : 'straight at the flag';
  return `; ${where} with the ${optionWords(plain.option)} ${strokesWords(plain.expectedStrokes)}`;
}

/** Distances, and today's number with its parts rounded so that they add up as printed. */
function distanceWords(shot: ShotDocument, units: Units): string {
  const lands = wholeLength(shot.landsM, units);
  const finishes = wholeLength(shot.finishesM, units);
  const leaves =
    shot.atFlag === undefined
      ? `, leaves ${lengthWords(Math.hypot(shot.spot.beyondFlagM, shot.spot.rightOfFlagM), units)}`
      : ` ${units}`;
  const printed = printedNumber(shot.todaysNumber, units === 'yd' ? YARD_M : 1);
  const told = (['wind', 'slope', 'air', 'lie'] as const).filter((name) => printed[name] !== 0);
  const sum = told.map((name) => `, ${name} ${signed(printed[name])}${aboutWords(shot, name, units)}`).join('');
  const verb = shot.lie === 'tee' ? 'Carries' : 'Lands';
  return `${verb} ${lands}, finishes ${finishes}${leaves}. Today lands ${printed.lands}${sum}, plays ${printed.plays}.`;
}

const signed = (n: number): string => (n === 0 ? '0' : `${n < 0 ? '\u2212' : '+'}${Math.abs(n)}`);

/** Between what the wind's part lies, four times in five. */
function aboutWords({ todaysNumber }: ShotDocument, name: 'wind' | 'slope' | 'air' | 'lie', units: Units): string {
  const about = name === 'wind' ? todaysNumber.doubt?.wind : undefined;
  if (about === undefined) return '';
  return ` (${signed(wholeLength(about.lo80, units))} to ${signed(wholeLength(about.hi80, units))})`;
}

const flaggedWords = (shot: ShotDocument): string[] =>
  shot.flagged === undefined
    ? []
    : [
        `  Caution: balls of this pattern reach ${[...new Set(shot.flagged.map(cautionNames))].join(', ')}. Be sure that nobody is there before you play.`,
      ];

const cautionNames = (c: { kind: string; name?: string | undefined }): string =>
  cautionWords(c.name === undefined ? { kind: c.kind } : { kind: c.kind, name: c.name });

const chancesWords = (chances: ShotDocument['chances']): string =>
  finishWords(chances)
    .map(([name, balls]) => `${name} ${balls}`)
    .join(', ');

const scoresWords = ({ scores }: ShotDocument): string[] =>
  scores === undefined
    ? []
    : [
        `  Of 100 holes so played: par or better ${balls(scores.parOrBetter)}, double or worse ${balls(scores.doubleOrWorse)}.`,
      ];

const balls = (chance: number): number => Math.round(100 * chance);

function roomWords(shot: ShotDocument, units: Units): string[] {
  if (shot.room.length === 0) return [];
  const side = (name: string, key: 'leftM' | 'rightM' | 'shortM' | 'longM'): string => {
    const arms = shot.room.map((r) => (r[key] === null ? 'free' : String(wholeLength(r[key], units))));
    return `${name} ${new Set(arms).size === 1 ? (arms[0] ?? '') : arms.join(' · ')}`;
  };
  const more = shot.room.map((r) => strokesWords(r.more)).join(' · ');
  const arms = [side('left', 'leftM'), side('right', 'rightM'), side('short', 'shortM'), side('long', 'longM')];
  return [`  Room before a ball costs ${more} more: ${arms.join(', ')} ${units}.`];
}

function elseWords(shot: ShotDocument, units: Units): string[] {
  const line = (s: Pick<StrokeDocument, 'option' | 'spot'>): string => strokeWords(s, shot, units);
  const costs = (n: number): string => (n < TIE_STROKES ? 'a tie' : `costs ${strokesWords(n)} more`);
  const isSimplest = (s: StrokeDocument): boolean =>
    line(s) === (shot.simplest === undefined ? undefined : line(shot.simplest));
  return [
    ...shot.alternatives
      .filter((a) => !isSimplest(a))
      .map(
        (a) =>
          `  Else ${line(a)}: ${strokesWords(a.expectedStrokes)}, ${a.tie === true ? 'a tie but for the putt' : costs(a.costsMore)}${a.costsMore < TIE_STROKES || a.tie === true ? '' : `: ${a.why}`}.`,
      ),
    ...(shot.simplest === undefined
      ? []
      : [`  Plainer, and a tie: ${line(shot.simplest)}: ${strokesWords(shot.simplest.expectedStrokes)}.`]),
    ...(shot.named ?? []).map(
      (n) =>
        `  As asked, ${line(n)}: ${strokesWords(n.expectedStrokes)}, ${costs(n.costsMore)}; of 100 balls: ${chancesWords(n.chances)}.`,
    ),
    ...(shot.worthLearning ?? []).map(
      (w) => `  Worth learning: ${line(w)} would save ${strokesWords(w.savesStrokes)} here.`,
    ),
  ];
}

const settleWords = ({ wouldSettle }: ShotDocument): string =>
  wouldSettle === undefined
    ? ''
    : ` ${wouldSettle.balls} more balls with the ${optionWords(wouldSettle)} would settle it against the next best.`;

const sureFourInFive = ({ doubt, expectedStrokes }: ShotDocument): string =>
  doubt.se > 0 ? `; sure to ±${strokesWords(doubt.hi80 - expectedStrokes)}, four times in five` : '';

const sureWords = (expected: number, doubt: HoleDocument['doubt']): string =>
  doubt.se > 0 ? `, sure to ±${strokesWords(doubt.hi80 - expected)}` : '';
