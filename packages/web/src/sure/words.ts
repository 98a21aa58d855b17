import { evidenceWords, type ShotDocument } from '@leeway/contract';
import { ballsIn100, capital, optionWords, type Scores, strokesWords } from '@leeway/engine';
import type { ScoresAnswer } from '../asks.ts';
import { ballsWords } from '../shell/words.ts';
import { unbroken } from '../words.ts';

/** How sure a choice is, what would settle it, and the chances of the score. */

/** "sure to ±0.08"; nothing where no doubt is known. */
const sureTo = ({ expectedStrokes, doubt }: ShotDocument): string =>
  doubt.se > 0 ? `sure to ±${strokesWords(doubt.hi80 - expectedStrokes)}` : '';

/** "41 balls, sure to ±0.04", short. */
export const sureShort = (shot: ShotDocument): string =>
  [shot.evidence === 'fitted' ? ballsWords(shot.doubt.balls) : 'no balls measured', sureTo(shot)]
    .filter((part) => part !== '' && !(shot.evidence === 'stated' && part.startsWith('no balls')))
    .join(', ');

/** The same in full. */
export const sureLong = (shot: ShotDocument): string => {
  const sure = sureTo(shot);
  return `${capital(evidenceWords(shot))}${sure === '' ? '' : `; ${sure}, four times in five`}.`;
};

/** What would settle a choice that hangs on what is not known of a pattern; nothing where none would, or it is settled. */
export const settleWords = ({ wouldSettle: w }: ShotDocument): string =>
  w === undefined
    ? ''
    : unbroken(
        `A close choice: ${w.balls === 1 ? '1 more ball' : `${w.balls} more balls`} with the ${optionWords(w)}, would settle it.`,
      );

const chancesWords = ({ parOrBetter, doubleOrWorse }: Scores): string =>
  `par or better ${ballsIn100(parOrBetter)} in 100, double or worse ${ballsIn100(doubleOrWorse)}`;

/** The chances of the score, with the choice and with each of those beside it, a line each. */
export const scoresWords = (shot: ShotDocument, { choice, others }: ScoresAnswer): readonly string[] => [
  `${capital(chancesWords(choice))}.`,
  ...others.map((scores, i) =>
    unbroken(`${capital(optionWords(shot.alternatives[i]?.option ?? shot.option))}: ${chancesWords(scores)}.`),
  ),
];
