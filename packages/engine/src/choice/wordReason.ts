import { distanceM } from '../geometry/segment.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { Option } from '../player/option.ts';
import type { Because } from './explain.ts';
import type { Choice } from './choose.ts';
import type { Reason } from './reason.ts';
import type { Contender, ShownStroke } from './shown.ts';
import type { StartLine } from './startLine.ts';
import { bearingRad, offsetOf } from './view.ts';
import {
  ballsIn100,
  capital,
  clubWords,
  finishWords,
  lengthWords,
  optionWords,
  outWords,
  spotWords,
  strokesWords,
  type Units,
  wholeLength,
} from './words.ts';
import { TIE_STROKES } from './doubt.ts';

/** A spot in the frame ball -> flag. */
export function fromFlag(choice: Choice, ground: HoleGround, shown: Pick<ShownStroke, 'spot'>) {
  const { alongM, acrossM } = offsetOf(shown.spot, ground.flag, bearingRad(choice.from.at, ground.flag));
  return { beyondFlagM: alongM, rightOfFlagM: acrossM };
}

/** One reason as one to three short sentences: the danger, the two chances, the price. */
export function wordReason(reason: Reason, choice: Choice, ground: HoleGround, units: Units): string {
  const { answer } = choice;
  switch (reason.kind) {
    case 'plain': {
      const other = reason.plain.shown;
      const whose = `of this player's ${ballsWords(other.priced.option)}`;
      return `${capital(plainWords(reason.plain.kind))}${wayOf(other, answer)} ${strokesWords(other.strokes)}, because ${wordBecause(reason.because, whose, units)}.`;
    }
    case 'plain tie': {
      const costs = reason.plain.shown.strokes - answer.strokes;
      const figures = `${strokesWords(answer.strokes)} and ${strokesWords(reason.plain.shown.strokes)}`;
      const why =
        costs < TIE_STROKES
          ? `under ${strokesWords(TIE_STROKES)} apart`
          : 'what is known of the player cannot tell them apart';
      return `${capital(plainWords(reason.plain.kind))}${wayOf(reason.plain.shown, answer)} is a tie: ${figures}, ${why}.`;
    }
    case 'depth': {
      const other = reason.dear === 'short' ? 'long' : 'short';
      const easy =
        reason.easyM === null
          ? `${other} there is more than ${lengthWords(75, units)}`
          : `${other} it takes ${lengthWords(reason.easyM, units)}`;
      return `${capital(reason.dear)} is the dear side: ${lengthWords(reason.dearM, units)} ${reason.dear} of the spot is ${finishWords(reason.landmark)} and costs 0.25 more; ${easy}.`;
    }
    case 'held back': {
      const names = [...new Set(reason.stroke.flagged.map((c) => cautionWords(c)))].join(', ');
      const saves = strokesWords(answer.strokes - reason.stroke.strokes);
      return `${capital(optionWords(reason.stroke.priced.option))}, ${whereWords(choice, ground, reason.stroke, units)}, would cost ${saves} less, but its pattern reaches ${names}; it is not shown first.`;
    }
    case 'unmapped':
      return `${ballsIn100(reason.chance)} in 100 finish on ground that is not mapped; what they cost is a guess.`;
    case 'leans on unmapped':
      return 'No stroke from here has its spot on mapped ground; map more of the hole before relying on this.';
  }
}

/** Where a stroke's spot lies: from the flag where it can be reached, else by how far out. */
function whereWords(choice: Choice, ground: HoleGround, shown: Pick<ShownStroke, 'spot'>, units: Units): string {
  const at = fromFlag(choice, ground, shown);
  return choice.plain?.kind === 'flag'
    ? spotWords(at, units)
    : outWords(distanceM(choice.from.at, ground.flag), at, units);
}

/** With which club, where it is not the choice's own: " with the three-quarter 7-iron". */
function wayOf({ priced }: Contender, answer: Contender): string {
  const { option } = priced;
  return option === answer.priced.option ? '' : ` with the ${option.swing} ${clubWords(option.club)}`;
}

/** Many of one stroke: "8-irons", "balls with the PW, half". */
function ballsWords(option: Option): string {
  const club = clubWords(option.club);
  return option.full && /(iron|wood|hybrid|driver)$/.test(club) ? `${club}s` : `balls with the ${optionWords(option)}`;
}

const plainWords = (kind: 'flag' | 'fairway'): string =>
  kind === 'flag' ? 'straight at the flag' : 'down the middle of the fairway';

/** A caution as a player would say it. */
export const cautionWords = (c: { readonly kind: string; readonly name?: string }): string =>
  c.kind === 'tee' || c.kind === 'green'
    ? `another hole's ${c.kind}${c.name === undefined ? '' : ` (${c.name})`}`
    : (c.name ?? `a ${c.kind}`);

/** Why the other stroke costs more, as the end of a sentence. `whose` says of which balls: "of this player's 8-irons". */
export function wordBecause(because: Because, whose: string, units: Units): string {
  const ofThem = whose === '' ? '' : ` ${whose}`;
  switch (because.kind) {
    case 'danger':
      return `${ballsIn100(because.there)} in 100${ofThem} finish ${finishWords(because.landmark)}; from the spot ${ballsIn100(because.here) || 'none'}`;
    case 'green':
      return `${ballsIn100(because.there) || 'none'} in 100${ofThem} finish on the green; from the spot ${ballsIn100(because.here)}`;
    case 'putt':
    case 'approach':
      return wholeLength(because.thereM, units) > wholeLength(because.hereM, units)
        ? `half${ofThem === '' ? ' of the balls' : ofThem} finish more than ${lengthWords(because.thereM, units)} from the flag; from the spot ${lengthWords(because.hereM, units)}`
        : 'the lies and lengths it leaves cost more, with no one danger to name';
  }
}

/** "the right edge of the back bunker", "19 yd left of the right bunkers", "the flag". */
export function wordStartLine(line: StartLine, units: Units): string {
  if (line.landmark === 'flag') return 'the flag';
  if (line.offsetM === 0) return `the ${line.edge} edge of ${line.landmark.words}`;
  const side = line.offsetM < 0 ? 'left' : 'right';
  const outside = side === line.edge;
  return `${lengthWords(Math.abs(line.offsetM), units)} ${side} of ${outside ? '' : `the ${line.edge} edge of `}${line.landmark.words}`;
}
